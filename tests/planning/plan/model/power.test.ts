import { type PlannedFeedLoad } from "../../../../src/planning/plan/model";
import { splitFeedPhase } from "../../../../src/planning/resilience";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const feed = { site: "Mill", volts: 200, phases: 1, breakerA: 10 } as const;
const [a, b, c] = [{ ...feed, feed: "A" }, { ...feed, feed: "B", site: " mill" }, { ...feed, feed: "C", site: "Yard", continuousShare: "100%", powerFactor: 0.5 }];
const rows = {
  feeds: [a, b, c],
  arrays: [
    { array: "two", site: "Mill", watts: 600, feedA: "A", feedB: "b" },
    { array: "one", site: "Yard", watts: 400, feedA: "C" },
    { array: "none", site: "mill", watts: 100, feedA: "X/L1" },
    { array: "quiet", site: "Mill", feedA: "A" },
  ],
  switches: [{ switch: "sw", site: "Mill", watts: 200, feedB: "A" }, { switch: "loose", site: "Mill", watts: 50 }],
} satisfies TableRows;

const figures = ({ row, normal, worst }: PlannedFeedLoad) => [
  row.feed, normal.normalWatts, normal.worstAmps, worst.normalWatts, worst.worstWatts, worst.worstAmps, worst.limitAmps, worst.ok,
];

describe("the loads of the feeds", () => {
  test("are half of every device on two feeds while all is well, and all of it once the other is lost", () => {
    expect(modelOf(rows).power.loads().map(figures)).toEqual([
      ["A", 500, 2.5, 500, 800, 4, 8, true],
      ["B", 300, 1.5, 300, 600, 3, 8, true],
      ["C", 400, 4, 400, 400, 4, 10, true],
    ]);
  });

  test("leave out feeds without volts or breaker, which take their part of a device all the same", () => {
    const unknown = (more: TableRow<"feeds">) =>
      modelOf({ ...rows, feeds: [a, { ...b, ...more }, c] }).power.loads().map(({ row, worst }) => [row.feed, worst.normalWatts, worst.worstWatts]);
    for (const more of [{ volts: null }, { volts: 0 }, { breakerA: null }, { breakerA: 0 }]) expect(unknown(more)).toEqual([["A", 500, 800], ["C", 400, 400]]);
  });

  test("count a feed of 1 V or a breaker of 1 A, and the half of either", () => {
    for (const more of [{ volts: 1 }, { breakerA: 1 }, { volts: 0.5 }, { breakerA: 0.5 }]) {
      expect(modelOf({ ...rows, feeds: [{ ...a, ...more }] }).power.loads().map(({ row }) => row.feed)).toEqual(["A"]);
    }
  });

  test("know a feed by the first row of its name, and none without a name", () => {
    const { power } = modelOf({ ...rows, feeds: [...rows.feeds, { ...feed, feed: "a", volts: 100 }, { ...feed, feed: null }] });
    expect(power.loads().map(({ row }) => row.row)).toEqual([4, 5, 6]);
  });

  test("count the phase that a device names on a feed of three, and no phase on a feed of one", () => {
    const three = {
      feeds: [{ ...feed, feed: "A", volts: 400, phases: 3 }, { ...feed, feed: "B" }],
      arrays: [{ array: "x", watts: 300, feedA: "A/L1" }, { array: "y", watts: 200, feedA: "A/L2", feedB: "B/L3" }],
    };
    const lines = (arrays: TableRows["arrays"]) => modelOf({ ...three, arrays }).power.loads().map(({ normal }) => normal.worstAmps);
    // Between line and neutral of 400 V there are 400/√3; L1 carries 300 W, L2 100 W.
    expect(lines(three.arrays)[0]).toBeCloseTo(300 / (400 / Math.sqrt(3)), 12);
    expect(lines(three.arrays)[1]).toBe(0.5);
    expect(lines([{ array: "x", watts: 300, feedA: "A" }, { array: "y", watts: 200, feedA: "A/L2", feedB: "B" }])[0]).toBeCloseTo(400 / (400 / Math.sqrt(3)), 12);
  });

  test("take 0.8 of the breaker and a power factor of 1 where the row says nothing or 0", () => {
    const [load] = modelOf({ feeds: [{ ...feed, feed: "A", powerFactor: 0 }], arrays: [{ array: "x", watts: 400, feedA: "A" }] }).power.loads();
    expect([load!.worst.worstAmps, load!.worst.limitAmps]).toEqual([2, 8]);
  });

  test("belong to the arrays on them, once each, in the order in which the arrays name them", () => {
    const model = modelOf(rows);
    const [two, one, none] = model.rows("arrays");
    expect(model.power.loadsOf([one!, two!, two!]).map(({ row }) => row.feed)).toEqual(["C", "A", "B"]);
    expect(model.power.loadsOf([none!])).toEqual([]);
    expect(model.power.loadsOf([])).toEqual([]);
  });

  test("belong to the site of the feed, whose name is taken without case", () => {
    expect(modelOf(rows).power.loadsAt("MILL ").map(({ row }) => row.feed)).toEqual(["A", "B"]);
    expect(modelOf(rows).power.loadsAt("")).toEqual([]);
  });

  test("leave out devices that are on no feed of the plan, which are named", () => {
    expect(modelOf(rows).power.unfedAt("Mill")).toEqual(["none", "loose"]);
    expect(modelOf(rows).power.unfedAt("Yard")).toEqual([]);
  });
});

describe("the feeds of a device", () => {
  test("are those that have a row, that of the first supply first", () => {
    const model = modelOf({ feeds: [{ feed: "A" }, { feed: "B" }], arrays: [{ array: "x", feedA: "b/L2", feedB: "A" }, { array: "y", feedB: "B" }] });
    expect(model.rows("arrays").map((row) => model.power.feedsOf(row).map((one) => one.feed))).toEqual([["B", "A"], ["B"]]);
    expect(model.power.feedNamed("")).toBeNull();
    expect(model.power.feedNamed("C")).toBeNull();
  });

  test.each([
    ["A/L2", "A", "L2"], ["A / l3", "A", "L3"], ["A/B/L1", "A/B", "L1"], ["A", "A", null], ["A/L4", "A/L4", null], ["A/L12", "A/L12", null], ["/L1", "/L1", null], ["", "", null], ["L1", "L1", null],
  ])("are written %p: feed %p, phase %p", (text, name, phase) => {
    expect(splitFeedPhase(text)).toEqual({ feed: name, phase });
  });
});

describe("a shelf with watts of its own", () => {
  const feeds = [{ feed: "A", site: "Mill", volts: 230, phases: 1, breakerA: 16 }];
  const arrays = [{ array: "x", site: "Mill", watts: 400, feedA: "A" }];

  test("is a load on its feeds beside its array, and one that says none is in its array's", () => {
    const { power } = modelOf({ feeds, arrays, shelves: [{ array: "x", shelf: "S1", watts: 100, feedA: "A" }, { array: "x", shelf: "S2", feedA: "A" }] });
    expect(power.loads()[0]!.normal.normalWatts).toBe(500);
  });

  test("is named where it is on no feed; one that says no watts is not", () => {
    const { power } = modelOf({ feeds, arrays, shelves: [{ array: "X", shelf: "S1", watts: 100 }, { array: "x", shelf: "S2" }] });
    expect(power.unfedAt("Mill")).toEqual(["X S1"]);
  });

  test("brings its feeds to those of its array", () => {
    const model = modelOf({ feeds: [...feeds, { ...feeds[0]!, feed: "B" }], arrays, shelves: [{ array: "x", shelf: "S1", watts: 100, feedA: "B" }] });
    expect(model.power.loadsOf(model.rows("arrays")).map(({ row }) => row.feed)).toEqual(["A", "B"]);
  });
});
