import { initiatorTwice } from "../../../../../src/planning/checks/rules/intent/initiator-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a name that two hosts have, in whatever case", () => {
  const rows = sample();
  rows.hosts[1]!.initiatorName = "IQN.2024-05.example.thornmere:scan-1";
  expect(found(initiatorTwice, rows)).toEqual(["Hosts 6 Initiator name: scan-2 has the initiator name of scan-1 in row 5: both would open the same volumes. Write its own."]);
});

test("takes hosts without a name, and one host in two rows", () => {
  const rows = sample();
  rows.hosts.push({ host: "a" }, { host: "b" }, { host: "scan-1", initiatorName: "iqn.2024-05.example.thornmere:scan-1" });
  expect(cells(initiatorTwice, rows)).toEqual([]);
});
