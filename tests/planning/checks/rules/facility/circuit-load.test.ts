import { circuitLoad } from "../../../../../src/planning/checks/rules/facility/circuit-load";
import { cells, found, sample } from "../../../../support/plan-rows";

// RR-A carries half of 1480 W while both feeds are up: 740 / (230 x 0.95) = 3.39 A.
test("finds a feed over its continuous share while all is well", () => {
  const rows = sample();
  rows.feeds[0]!.breakerA = 4;
  expect(found(circuitLoad, rows)).toEqual(["Feeds 5 Breaker A: RR-A carries 3.39 A all the time, its limit is 3.2 A. Move some of it to another feed."]);
});

test("takes one just below it, and 0.8 where the share is blank (NFPA 70, 210.20(A))", () => {
  const rows = sample();
  Object.assign(rows.feeds[0]!, { breakerA: 4.3, continuousShare: null });
  expect(cells(circuitLoad, rows)).toEqual([]);
});

test("counts the phase with the most on it", () => {
  const rows = sample();
  // 620 W on L2 and on L3 each, half of it from this feed: 310 / (400 / sqrt(3) x 0.95) = 1.41 A; both on L2 twice that.
  rows.feeds[4]!.breakerA = 2;
  expect(cells(circuitLoad, rows)).toEqual([]);
  rows.arrays[5]!.feedA = "CS-A/L2";
  expect(cells(circuitLoad, rows)).toEqual(["Feeds 9 Breaker A"]);
});

test("says nothing of a feed whose breaker is not known", () => {
  const rows = sample();
  rows.feeds[0]!.breakerA = null;
  expect(cells(circuitLoad, rows)).toEqual([]);
});
