import { unknownOpener } from "../../../../../src/planning/checks/rules/intent/unknown-opener";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds who is neither a host nor a group, and a row that names nobody", () => {
  const rows = sample();
  rows.access[0]!.to = "Scaning";
  rows.access[1]!.to = null;
  expect(found(unknownOpener, rows)).toEqual([
    'Access 5 Host or group: "Scaning" is no host and no group. Write a host of the table Hosts, or a group of its column Groups.',
    "Access 6 Host or group: Nobody is named who opens scans-index. Write a host of the table Hosts, or a group of its column Groups.",
  ]);
});

test("takes hosts and groups in whatever case, and one group among several", () => {
  const rows = sample();
  rows.hosts[2]!.groups = "nightly, Deep archive";
  rows.access.push({ volume: "masters", to: "DEEP ARCHIVE" }, { volume: "masters", to: "Archive-1" });
  expect(cells(unknownOpener, rows)).toEqual([]);
});
