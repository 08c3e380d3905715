import { volumeOpenedTwice } from "../../../../../src/planning/checks/rules/intent/volume-opened-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a row that stands twice, and a host that its group lets in already", () => {
  const rows = sample();
  rows.access.push({ ...rows.access[2]! }, { volume: "scans-live", to: "scan-2", number: 9 });
  expect(found(volumeOpenedTwice, rows)).toEqual([
    "Access 9 Host or group: scan-2 opens scans-live by row 5 already. Delete one of the two rows.",
    "Access 8 Host or group: archive-1 opens masters by row 7 already. Delete one of the two rows.",
  ]);
});

test("takes the hosts of a group one by one, and leaves two rights to the rule about them", () => {
  const rows = sample();
  rows.access[0]!.to = "scan-1";
  rows.access.push({ volume: "scans-live", to: "scan-2", number: 1 }, { ...rows.access[2]!, right: "read" });
  expect(cells(volumeOpenedTwice, rows)).toEqual([]);
});
