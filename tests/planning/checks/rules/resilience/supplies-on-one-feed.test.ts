import { suppliesOnOneFeed } from "../../../../../src/planning/checks/rules/resilience/supplies-on-one-feed";
import { cells, found, sample } from "../../../../support/plan-rows";

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

test("says which device would go dark, and which has a feed for one supply only", () => {
  const rows = sample();
  rows.arrays[0]!.feedB = null;
  rows.switches[4]!.feedB = "CS-A/L2";
  expect(found(suppliesOnOneFeed, rows)).toEqual([
    "Arrays 5 Feed B: rr-array-1 has a feed for one supply only. Name the feed of the other, on another source.",
    "Switches 9 Feed B: Both supplies of cs-sw1 hang on CS-A: when it fails the device goes dark. Put one on another feed.",
  ]);
});

test("finds a shelf whose two supplies hang on one feed", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", feedA: "RR-A", feedB: "RR-A" }, { array: "rr-array-1", shelf: "S2", feedA: "RR-A", feedB: "RR-B" }];
  expect(found(suppliesOnOneFeed, rows)).toEqual(["Shelves 5 Feed B: Both supplies of rr-array-1 S1 hang on RR-A: when it fails the device goes dark. Put one on another feed."]);
});
