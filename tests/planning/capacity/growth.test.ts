import fc from "fast-check";
import { demandTerabytes, planExpansion, yearsUntilFull } from "../../../src/planning/capacity";
import { bytes, parseSize, parseSizeOrZero, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const growth = (used: number, yearlyGrowth: number) => ({ used: parseSizeOrZero(used, "used"), yearlyGrowth });
const tb = (size: number) => parseSize(size, "size");

describe("demand", () => {
  test.each<[number, number, number, number]>([
    [10, 0.2, 3, 17.28],
    [10, 0.2, 0, 10],
    [100, -0.5, 2, 25],
    [0, 0.2, 3, 0],
    [10, 0, 7, 10],
    [1.1 + 2.2, 1, 1, 6.6],
    [1, 3, 0.5, 2],
    [1, 3, 2.5, 32],
    [8, -0.75, 1.5, 1],
  ])("of %p TB growing by %p is, after %p years, %p TB", (used, yearly, years, demand) => {
    expect(demandTerabytes(growth(used, yearly), years).toNumber()).toBe(demand);
  });
});

describe("years until full", () => {
  test.each<[number, number, number, number, number]>([
    [40, 1, 80, 1, 1],
    [40, 1, 100, 0.8, 1],
    [10, 0.2, 17.28, 1, 3],
    [80, 0.2, 80, 1, 0],
    [90, 0.2, 80, 1, 0],
    [90, -0.2, 80, 1, 0],
    [70, 0, 80, 0.8, 0],
  ])("%p TB growing by %p fill %p TB to %p after %p", (used, yearly, capacity, fill, years) => {
    expect(yearsUntilFull(growth(used, yearly), tb(capacity), share(fill))).toBe(years);
  });

  test("and the demand after them is the capacity again", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 500 }), fc.integer({ min: 100, max: 1000 }), (used, percent, capacity) => {
        const years = yearsUntilFull(growth(used, percent / 100), tb(capacity), share(1));
        fc.pre(years <= 100);
        expect(demandTerabytes(growth(used, percent / 100), years).toNumber() / capacity).toBeCloseTo(1, 12);
      }),
      { seed: 11, numRuns: 100 },
    );
  });

  test.each<[number, number, string, number, string]>([
    [40, 0, "yearlyGrowth", 0, "yearlyGrowth is 0, so the capacity never fills. Write a growth above 0, such as 20%."],
    [40, -0.1, "yearlyGrowth", -0.1, "yearlyGrowth is -0.1, so the capacity never fills. Write a growth above 0, such as 20%."],
    [40, 1e-308, "yearlyGrowth", 1e-308, "yearlyGrowth is 1e-308, so the capacity never fills. Write a growth above 0, such as 20%."],
    [0, 0.2, "used", 0, "used is 0, and growth of nothing never fills the capacity. Write what is used today, such as 10."],
  ])("%p TB growing by %p never fill it: no answer", (used, yearly, argument, received, sentence) => {
    expect(problemOf(() => yearsUntilFull(growth(used, yearly), tb(80), share(1)))).toMatchObject({ kind: "no-answer", argument, received, sentence });
  });
});

describe("an expansion plan", () => {
  test("buys, year by year, the fewest steps that keep demand within the fill share", () => {
    expect(planExpansion(growth(30, 0.2), tb(40), tb(10), 3, share(0.8))).toEqual([
      { year: 1, demandTerabytes: 36, capacityTerabytes: 50, stepsBought: 1, fill: 0.72 },
      { year: 2, demandTerabytes: 43.2, capacityTerabytes: 60, stepsBought: 1, fill: 0.72 },
      { year: 3, demandTerabytes: 51.84, capacityTerabytes: 70, stepsBought: 1, fill: 5184 / 7000 },
    ]);
  });

  test("buys nothing where demand meets the limit exactly", () => {
    expect(planExpansion(growth(10, 0.2), tb(15), tb(1), 1, share(0.8))[0]).toMatchObject({ stepsBought: 0, fill: 0.8 });
  });

  test("gives nothing back when demand falls", () => {
    expect(planExpansion(growth(30, -0.5), tb(40), tb(10), 2, share(1)).map((year) => year.capacityTerabytes)).toEqual([40, 40]);
  });

  test("never passes the limit, and one step fewer would", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 14n }), fc.integer({ min: -50, max: 200 }), fc.integer({ min: 1, max: 100 }), (used, percent, fill) => {
        const limit = fill / 100;
        for (const year of planExpansion({ used: bytes(used), yearlyGrowth: percent / 100 }, tb(40), tb(7), 5, share(limit))) {
          expect(year.fill).toBeLessThanOrEqual(limit * (1 + 1e-15));
          if (year.stepsBought > 0) expect(year.demandTerabytes / (year.capacityTerabytes - 7)).toBeGreaterThan(limit * (1 - 1e-12));
        }
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});
