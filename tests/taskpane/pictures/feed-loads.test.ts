import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { drawFeedLoads } from "../../../src/taskpane/pictures/feed-loads";
import { snapshotOf } from "../../support/plain-workbook";

const feed = { site: "Mill", volts: 200, phases: 1, breakerA: 10, continuousShare: 0.8, powerFactor: 1 } as const;

function pictureOf(watts: number, extra: TableRows = {}) {
  const rows: TableRows = { feeds: [{ ...feed, feed: "A" }, { ...feed, feed: "B" }], arrays: [{ array: "one", site: "Mill", watts, feedA: "A", feedB: "B" }], ...extra };
  const { power } = new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows)));
  return drawFeedLoads("Mill", power.loadsAt("mill"), power.unfedAt("Mill"));
}

describe("the picture of the feed loads", () => {
  test("draws normal and worst load against the limit: half of 1600 W and all of it, where 8 A of 200 V are allowed", () => {
    const { shapes, summary } = pictureOf(1600);
    const bars = shapes.filter(({ tag }) => tag === "rect").map(({ attributes }) => Number(attributes["width"]));
    const post = Number(shapes.find(({ attributes }) => attributes["class"] === "post")!.attributes["x1"]) - 1;
    expect(bars[0]! / post).toBeCloseTo(0.5, 2);
    expect(bars[1]! / post).toBeCloseTo(1, 2);
    expect(summary).toContain("A carries 4 A, at worst 8 A of 8 A (100%).");
  });

  test("says by sign, filling and words that a feed is too weak once the other is lost", () => {
    const { shapes, summary } = pictureOf(1700);
    expect(shapes.filter(({ text }) => text?.startsWith("!"))).toHaveLength(2);
    expect(shapes.filter(({ attributes }) => attributes["class"] === "part used alarm")).toHaveLength(2);
    expect(summary).toContain("too much once another feed is lost");
  });

  test("keeps a bar far over its limit inside the picture", () => {
    const { shapes, width } = pictureOf(16_000);
    for (const { tag, attributes } of shapes) if (tag === "rect") expect(Number(attributes["x"]) + Number(attributes["width"])).toBeLessThanOrEqual(width);
  });

  test("names devices that are on no feed, since their load is in no bar", () => {
    expect(pictureOf(100, { switches: [{ switch: "sw", site: "Mill", watts: 80 }] }).summary).toContain("On no feed yet, and in no bar: sw.");
  });
});
