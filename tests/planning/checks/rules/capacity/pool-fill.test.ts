import { poolFill } from "../../../../../src/planning/checks/rules/capacity/pool-fill";
import { cells, found, sample, set } from "../../../../support/plan-rows";

// The pool Masters: two arrays of 23 drives of 8 TB, 8+3, a tenth kept free: 2 x 120.436 TB usable; its limit is 85 %, 204.741 TB.
test("finds a pool over its fill limit", () => {
  const rows = sample();
  rows.arrays[4]!.used = "160 TB";
  expect(found(poolFill, rows)).toEqual(["Pools 6 Fill limit: Masters holds 205 TB of 240.87 TB usable, 85.11% where 85% is the limit. Add capacity."]);
});

test("takes one just below it", () => {
  const rows = sample();
  rows.arrays[4]!.used = "159.7 TB";
  expect(cells(poolFill, rows)).toEqual([]);
});

test("goes by the setting where a pool names no limit", () => {
  const rows = sample();
  rows.pools[1]!.fillLimit = null;
  set(rows, "Fill limit", "30%");
  expect(cells(poolFill, rows)).toEqual(["Pools 6 Fill limit"]);
});

test("says nothing of a pool whose capacity is not known whole", () => {
  const rows = sample();
  rows.arrays[4]!.used = "160 TB";
  rows.arrays[5]!.scheme = null;
  expect(cells(poolFill, rows)).toEqual([]);
});

test("takes a pool of one array that is filled to its limit, and finds one byte more", () => {
  const rows = sample();
  rows.pools.push({ pool: "Drafts", fillLimit: 0.5, acrossArrays: "none" });
  // Four drives of 1 TB without redundancy: 4 TB usable.
  rows.arrays.push({ array: "drafts", site: "Bindery", drives: 4, driveSize: "1 TB", scheme: "none", spares: 0, pool: "Drafts", used: "2 TB" });
  expect(cells(poolFill, rows)).toEqual([]);
  rows.arrays.at(-1)!.used = "2000000000001 B";
  expect(cells(poolFill, rows)).toEqual(["Pools 7 Fill limit"]);
});

test("says nothing of a pool without arrays", () => {
  const rows = sample();
  rows.pools.push({ pool: "Drafts", acrossArrays: "none" });
  expect(cells(poolFill, rows)).toEqual([]);
});
