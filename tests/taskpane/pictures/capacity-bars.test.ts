import { layoutCapacity } from "../../../src/planning/drawings";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { drawCapacity } from "../../../src/taskpane/pictures/capacity-bars";
import { snapshotOf } from "../../support/plain-workbook";

const capacityOf = (rows: TableRows) => layoutCapacity(new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows))));
const array = { site: "Mill", drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 0, used: "10 TB" } as const;

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
    expect(shapes.some(({ text }) => text === "! P")).toBe(true);
    expect(summary).toContain("Over its fill limit.");
  });
});
