import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { describePool, drawCapacity, layoutCapacity } from "../../../src/taskpane/pictures/capacity-bars";
import { snapshotOf } from "../../support/plain-workbook";

const capacityOf = (rows: TableRows) => layoutCapacity(new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows))));
const tera = 1_000_000_000_000n;
const array = { site: "Mill", drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 0, used: "10 TB" } as const;

describe("the capacity of pools", () => {
  test("adds raw, usable and used of the arrays of each pool up", () => {
    const [pool] = capacityOf({ pools: [{ pool: "P", fillLimit: 0.8 }], arrays: [{ ...array, array: "a", pool: "P" }, { ...array, array: "b", pool: "p" }] });
    expect(pool).toMatchObject({ pool: "P", raw: 96n * tera, usable: 80n * tera, used: 20n * tera, redundancy: 16n * tera, fillLimit: 0.8, left: [] });
  });

  test("takes every byte of raw capacity for something", () => {
    const arrays = [
      { ...array, array: "a", pool: "P", spares: 1, reserve: 0.1, driveSize: "3.84 TB" },
      { ...array, array: "b", pool: "P", scheme: "RAID 60 3+2" },
    ];
    const pools = capacityOf({ pools: [{ pool: "P", fillLimit: 0.8 }], arrays });
    for (const { raw, usable, redundancy, reserve, spare } of pools) expect(usable + redundancy + reserve + spare).toBe(raw);
  });

  test("puts arrays without a pool last, under their own name", () => {
    expect(capacityOf({ pools: [{ pool: "P" }], arrays: [{ ...array, array: "a" }, { ...array, array: "b", pool: "P" }] }).map(({ pool }) => pool)).toEqual(["P", "No pool"]);
  });

  test("names an array that cannot be counted", () => {
    const [pool] = capacityOf({ pools: [{ pool: "P", fillLimit: 0.8 }], arrays: [{ ...array, array: "a", pool: "P", drives: 3 }, { array: "b", pool: "P" }] });
    expect(pool!.left).toEqual(["a", "b"]);
    expect(describePool(pool!)).toContain("Not counted, for want of scheme, drives or drive size that fit: a, b.");
  });
});

describe("the picture of the capacity", () => {
  const barsOf = (used: string) =>
    drawCapacity(capacityOf({ pools: [{ pool: "P", fillLimit: 0.5 }], arrays: [{ ...array, array: "a", pool: "P", used }] })).shapes.filter(({ tag }) => tag === "rect");

  test("draws parts side by side, as long as they are large", () => {
    const bars = barsOf("10 TB").map(({ attributes }) => ({ x: Number(attributes["x"]), width: Number(attributes["width"]) }));
    bars.slice(1).forEach(({ x }, index) => expect(x).toBeCloseTo(bars[index]!.x + bars[index]!.width, 1));
    // Of 48 TB raw: 10 used, 10 to the limit of half of 40 usable, 20 above it, 8 redundancy.
    const whole = bars.reduce((sum, { width }) => sum + width, 0);
    expect(bars.map(({ width }) => Math.round((width / whole) * 48))).toEqual([10, 10, 20, 8, 0]);
  });

  test("says by a filling, a sign and words that a pool is over its limit", () => {
    const pools = capacityOf({ pools: [{ pool: "P", fillLimit: 0.5 }], arrays: [{ ...array, array: "a", pool: "P", used: "30 TB" }] });
    const { shapes, summary } = drawCapacity(pools);
    expect(shapes.some(({ attributes }) => attributes["class"] === "part used alarm")).toBe(true);
    expect(shapes.some(({ text }) => text === "⚠ P")).toBe(true);
    expect(summary).toContain("Over its fill limit.");
  });
});
