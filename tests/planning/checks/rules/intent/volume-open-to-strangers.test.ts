import { volumeOpenToStrangers } from "../../../../../src/planning/checks/rules/intent/volume-open-to-strangers";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a volume that hosts of no common group open, one of them to write", () => {
  const rows = sample();
  rows.access.push({ volume: "scans-live", to: "archive-1", right: "read" });
  expect(found(volumeOpenToStrangers, rows)).toEqual([
    "Access 8 Host or group: scan-1 and 2 more open scans-live and are in no group together: they destroy what is on it. Name their group, or close it to one.",
  ]);
});

test("takes hosts of one group, one host in two rows, and hosts that all only read", () => {
  const rows = sample();
  rows.access.push({ volume: "masters", to: "archive-1" }, { volume: "scans-live", to: "scan-1" }, { volume: "scans-live", to: "scan-2" });
  expect(cells(volumeOpenToStrangers, rows)).toEqual([]);
  rows.access[0]!.right = "read";
  rows.access.splice(3, 3, { volume: "scans-live", to: "archive-1", right: "read" });
  expect(cells(volumeOpenToStrangers, rows)).toEqual([]);
});
