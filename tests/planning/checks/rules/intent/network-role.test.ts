import { networkRole } from "../../../../../src/planning/checks/rules/intent/network-role";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a network of arrays without a role, and a word that is none", () => {
  const rows = sample();
  rows.networks[0]!.role = null;
  rows.networks[6]!.role = "management, backup";
  expect(found(networkRole, rows)).toEqual([
    "Networks 5 Role: rr-data-1 has no role, so paths over it are not counted or checked. Write data, management or replication.",
    'Networks 11 Role: Role "backup" is not known. Write data, management, replication, cluster, or several with commas between.',
  ]);
});

test("takes several roles in any case, and a network that no array reaches", () => {
  const rows = sample();
  rows.networks[0]!.role = "Data, REPLICATION";
  rows.networks.push({ network: "office", site: "Attic", prefix: "10.99.0.0/24" });
  expect(cells(networkRole, rows)).toEqual([]);
});
