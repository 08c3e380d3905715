import { feedTakeover } from "../../../../../src/planning/checks/rules/resilience/feed-takeover";
import { cells, found, sample } from "../../../../support/plan-rows";

// RR-A: 2 arrays of 620 W and 2 switches of 120 W are 1480 W on both feeds; alone 1480 / (230 x 0.95) = 6.77 A.
test("finds a feed that cannot carry the load of the other", () => {
  const rows = sample();
  rows.feeds[0]!.breakerA = 8;
  expect(found(feedTakeover, rows)).toEqual(["Feeds 5 Breaker A: RR-A would carry 6.77 A once the other feed is lost, its limit is 6.4 A. Spread the load."]);
});

test("takes one that just can, and leaves one over its limit all the time to another rule", () => {
  const rows = sample();
  rows.feeds[0]!.breakerA = 8.5;
  rows.feeds[1]!.breakerA = 4;
  expect(cells(feedTakeover, rows)).toEqual([]);
});
