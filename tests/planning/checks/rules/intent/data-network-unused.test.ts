import { dataNetworkUnused } from "../../../../../src/planning/checks/rules/intent/data-network-unused";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a data network that no port is in", () => {
  const rows = sample();
  rows.networks.push({ network: "rr-data-3", site: "Reading Room", prefix: "10.64.13.0/24", gateway: "none", role: "data" });
  expect(found(dataNetworkUnused, rows)).toEqual(["Networks 15 Network: No array port is in rr-data-3, a data network. Give arrays ports in it, or mend its role."]);
});

test("takes one of another role, one at a site without ports, and one with a single port", () => {
  const rows = sample();
  rows.networks.push({ network: "rr-copy", site: "Reading Room", role: "replication" }, { network: "attic", site: "Attic", role: "data" });
  rows.networks.push({ network: "rr-data-3", site: "Reading Room", role: "data" });
  rows.ports[0]!.network = "rr-data-3";
  expect(cells(dataNetworkUnused, rows)).toEqual([]);
});
