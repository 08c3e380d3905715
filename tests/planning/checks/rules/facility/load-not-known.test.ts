import { loadNotKnown } from "../../../../../src/planning/checks/rules/facility/load-not-known";
import { found, sample } from "../../../../support/plan-rows";

describe("load-not-known", () => {
  test("notes, feed by feed, the arrays and switches that do not say what they draw", () => {
    const rows = sample();
    rows.models[1]!.watts = null;
    rows.switches[2]!.watts = null;
    rows.arrays[3]!.feedB = null;
    expect(found(loadNotKnown, rows)).toEqual([
      "Feeds 7 Feed: The load of BI-A leaves out bi-array-1 and 2 more, whose Watts are blank. Write them there, or for its model.",
      "Feeds 8 Feed: The load of BI-B leaves out bi-array-1 and 1 more, whose Watts are blank. Write them there, or for its model.",
    ]);
  });

  test("names a device once that hangs on two phases of a feed", () => {
    const rows = sample();
    Object.assign(rows.switches[4]!, { watts: null, feedB: "CS-A/L2" });
    expect(found(loadNotKnown, rows)).toEqual(["Feeds 9 Feed: The load of CS-A leaves out cs-sw1, whose Watts are blank. Write them there, or for its model."]);
  });

  test("is content with 0 W, with a device on no feed, and with a shelf, which is in the load of its array", () => {
    const rows = sample();
    rows.switches[0]!.watts = 0;
    Object.assign(rows.switches[1]!, { watts: null, feedA: null, feedB: null });
    rows.shelves = [{ array: "rr-array-1", shelf: "S1", feedA: "RR-A", feedB: "RR-B" }];
    expect(found(loadNotKnown, rows)).toEqual([]);
  });
});
