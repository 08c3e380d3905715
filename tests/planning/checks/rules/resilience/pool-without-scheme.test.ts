import { poolWithoutScheme } from "../../../../../src/planning/checks/rules/resilience/pool-without-scheme";
import { cells, sample } from "../../../../support/plan-rows";

test("notes a pool of several arrays without a scheme across them, once", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = null;
  expect(cells(poolWithoutScheme, rows)).toEqual(["Pools 5 Across arrays", "Pools 6 Across arrays"]);
});

test("says nothing of a pool of one array", () => {
  const rows = sample();
  rows.arrays[5]!.pool = null;
  expect(cells(poolWithoutScheme, rows)).toEqual([]);
});
