import { describePool, layoutCapacity } from "../../../src/planning/drawings";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
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
    const pools = capacityOf({
      pools: [{ pool: "P", fillLimit: 0.8 }],
      arrays: [{ ...array, array: "a", pool: "P", spares: 1, reserve: 0.1, driveSize: "3.84 TB" }, { ...array, array: "b", pool: "P", scheme: "RAID 60 3+2" }],
    });
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
