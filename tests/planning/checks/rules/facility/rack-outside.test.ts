import { rackOutside } from "../../../../../src/planning/checks/rules/facility/rack-outside";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds what reaches over the top or below the bottom of its rack", () => {
  const rows = sample();
  rows.arrays[0]!.bottomUnit = 40;
  rows.arrays[1]!.bottomUnit = 0;
  expect(cells(rackOutside, rows)).toEqual(["Arrays 5 Bottom unit", "Arrays 6 Bottom unit"]);
  expect(found(rackOutside, rows)[0]).toContain("units 40 to 43 of RR-R1, which has 1 to 42");
});

test("takes the topmost units", () => {
  const rows = sample();
  rows.arrays[0]!.bottomUnit = 39;
  expect(cells(rackOutside, rows)).toEqual([]);
});

test("counts from the top where the rack does", () => {
  const rows = sample();
  rows.racks[0]!.numberedFrom = "top";
  rows.arrays[0]!.bottomUnit = 3;
  expect(cells(rackOutside, rows)).toEqual(["Arrays 5 Bottom unit"]);
  rows.arrays[0]!.bottomUnit = 4;
  expect(cells(rackOutside, rows)).toEqual([]);
});
