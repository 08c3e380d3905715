import { drivesOutsideGroup } from "../../../../../src/planning/checks/rules/capacity/drives-outside-group";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds drives that fill no group", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { spares: 1 });
  expect(found(drivesOutsideGroup, rows)).toEqual([
    "Arrays 5 Drives: 1 drive of rr-array-1 would fill no group of RAID 60 9+2 and store nothing. Change drives, spares or the group shape.",
  ]);
});

test("counts them where there are several", () => {
  const rows = sample();
  // 24 drives less 0 spares are two groups of 11 and two drives.
  Object.assign(rows.arrays[0]!, { spares: 0 });
  expect(found(drivesOutsideGroup, rows)[0]).toMatch(/^Arrays 5 Drives: 2 drives of rr-array-1 would fill no group/);
});

test("takes whole groups, one group of any size, and spread schemes", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { scheme: "9+2", spares: 1 });
  expect(cells(drivesOutsideGroup, rows)).toEqual([]);
});
