import { suppliesOnOneFeed } from "../../../../../src/planning/checks/rules/resilience/supplies-on-one-feed";
import { cells, sample } from "../../../../support/plan-rows";

test("finds both supplies of an array or a switch on one feed, on whatever phase", () => {
  const rows = sample();
  rows.arrays[0]!.feedB = "RR-A";
  rows.arrays[4]!.feedB = "CS-A/L3";
  rows.switches[0]!.feedB = "rr-a";
  expect(cells(suppliesOnOneFeed, rows)).toEqual(["Arrays 5 Feed B", "Arrays 9 Feed B", "Switches 5 Feed B"]);
});

test("finds an array of which one supply has no feed", () => {
  const rows = sample();
  rows.arrays[0]!.feedA = null;
  expect(cells(suppliesOnOneFeed, rows)).toEqual(["Arrays 5 Feed A"]);
});

test("takes a switch with one supply, and an array whose power is not planned yet", () => {
  const rows = sample();
  rows.switches[0]!.feedB = null;
  Object.assign(rows.arrays[0]!, { feedA: null, feedB: null });
  expect(cells(suppliesOnOneFeed, rows)).toEqual([]);
});
