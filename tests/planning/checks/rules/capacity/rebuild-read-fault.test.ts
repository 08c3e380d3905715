import { rebuildReadFault } from "../../../../../src/planning/checks/rules/capacity/rebuild-read-fault";
import { cells, found, sample, set } from "../../../../support/plan-rows";

// Eight data drives of 16 TB are 1.024e15 bits; at one unreadable bit in 1e15 the chance is 1 - exp(-1.024) = 64 %.
test("finds an array that survives one failure and reads too much to rebuild", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { scheme: "RAID 5", drives: 10 });
  expect(found(rebuildReadFault, rows)).toEqual([
    "Arrays 7 Scheme: A rebuild of bi-array-1 meets a read fault with a chance of 64.08%, over 10%. Choose a scheme that survives two failures.",
  ]);
});

test("takes a rebuild that reads little enough", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { scheme: "RAID 10", driveSize: "12 TB", drives: 11 });
  expect(cells(rebuildReadFault, rows)).toEqual([]);
});

test("follows the settings", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { scheme: "RAID 5", drives: 10 });
  set(rows, "Read fault share", "65%");
  expect(cells(rebuildReadFault, rows)).toEqual([]);
  set(rows, "Read error rate", "1E-14");
  expect(cells(rebuildReadFault, rows)).toEqual(["Arrays 7 Scheme"]);
});
