import { switchesOnOneFeed } from "../../../../../src/planning/checks/rules/resilience/switches-on-one-feed";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds that one feed takes all switches of a site with it", () => {
  const rows = sample();
  Object.assign(rows.switches[0]!, { feedA: "RR-A", feedB: null });
  Object.assign(rows.switches[1]!, { feedA: "RR-A", feedB: null });
  expect(found(switchesOnOneFeed, rows)).toEqual(["Switches 6 Feed A: All switches of Reading Room hang on RR-A alone: when it fails no array is reached. Put one on another feed."]);
});

test("finds that one source does, over different feeds", () => {
  const rows = sample();
  rows.feeds[1]!.source = "Reading Room UPS";
  Object.assign(rows.switches[0]!, { feedA: "RR-A", feedB: null });
  Object.assign(rows.switches[1]!, { feedA: null, feedB: "RR-B" });
  expect(found(switchesOnOneFeed, rows)).toEqual([expect.stringContaining("All switches of Reading Room hang on Reading Room UPS alone")]);
});

test("takes one switch on each feed, and a site with one switch", () => {
  const rows = sample();
  Object.assign(rows.switches[0]!, { feedA: "RR-A", feedB: null });
  Object.assign(rows.switches[1]!, { feedA: "RR-B", feedB: null });
  rows.switches[3]!.site = null;
  Object.assign(rows.switches[2]!, { feedB: null });
  expect(cells(switchesOnOneFeed, rows)).toEqual([]);
});

test("takes switches of which one is on both feeds, or on a feed that has no row", () => {
  const rows = sample();
  Object.assign(rows.switches[1]!, { feedA: "RR-A", feedB: null });
  expect(cells(switchesOnOneFeed, rows)).toEqual([]);
  Object.assign(rows.switches[0]!, { feedA: "RR-X", feedB: null });
  expect(cells(switchesOnOneFeed, rows)).toEqual([]);
});

test("names the column of the feed that is there", () => {
  const rows = sample();
  Object.assign(rows.switches[0]!, { feedA: null, feedB: "RR-A" });
  Object.assign(rows.switches[1]!, { feedA: null, feedB: "RR-A" });
  expect(cells(switchesOnOneFeed, rows)).toEqual(["Switches 6 Feed B"]);
});
