import { feedPhase } from "../../../../../src/planning/checks/rules/facility/feed-phase";
import { cells, found, mends, sample } from "../../../../support/plan-rows";

test("finds a phase of a feed that has only one, and writes the feed", () => {
  const rows = sample();
  rows.arrays[0]!.feedA = "RR-A/L2";
  rows.switches[1]!.feedB = "RR-B/L1";
  expect(cells(feedPhase, rows)).toEqual(["Arrays 5 Feed A", "Switches 6 Feed B"]);
  expect(mends(feedPhase, rows)).toEqual(["Arrays 5 Feed A: RR-A", "Switches 6 Feed B: RR-B"]);
});

test("takes phases of a three-phase feed", () => {
  expect(cells(feedPhase, sample())).toEqual([]);
});

test("finds the phase of a feed that has one at a shelf", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", feedA: "RR-A/L1", feedB: "RR-B" }];
  expect(cells(feedPhase, rows)).toEqual(["Shelves 5 Feed A"]);
});

test("finds a feed of two phases, which is counted with one", () => {
  const rows = sample();
  rows.feeds[0]!.phases = 2;
  expect(found(feedPhase, rows)).toEqual(["Feeds 5 Phases: RR-A has 2 phases, and is counted with one. Write 1, or 3."]);
});
