import { rightsDiffer } from "../../../../../src/planning/checks/rules/intent/rights-differ";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a group of which one host cannot open the volume, or only read it", () => {
  const rows = sample();
  rows.access[0]!.to = "scan-1";
  expect(found(rightsDiffer, rows)).toEqual(["Access 5 Right: scan-1 opens scans-live to read and write, scan-2 of the same group not at all. Give both one right."]);
  rows.access.push({ volume: "scans-live", to: "scan-2", right: "read" });
  expect(found(rightsDiffer, rows)).toEqual(["Access 5 Right: scan-1 opens scans-live to read and write, scan-2 of the same group to read. Give both one right."]);
  rows.access[3]!.right = "read and write";
  expect(cells(rightsDiffer, rows)).toEqual([]);
});

test("takes a group that reads, and a host that is in no group", () => {
  const rows = sample();
  rows.access[0]!.right = "read";
  rows.access[2]!.right = "read";
  expect(cells(rightsDiffer, rows)).toEqual([]);
});

test("finds a host that opens a volume with two rights: by itself and by its group, or by two rows", () => {
  const rows = sample();
  rows.access.push({ volume: "scans-live", to: "scan-1", right: "read" });
  expect(found(rightsDiffer, rows)).toEqual(["Access 8 Right: scan-1 may only read scans-live here, and write it by another row. Give it one right."]);
  rows.access[3] = { volume: "masters", to: "archive-1", right: "read" };
  expect(cells(rightsDiffer, rows)).toEqual(["Access 8 Right"]);
});
