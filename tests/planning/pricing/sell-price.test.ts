import fc from "fast-check";
import { sellPrice } from "../../../src/planning/pricing";
import { exactDecimal } from "../../../src/planning/quantity";

const price = (cost: number, profit: number, kind: "margin" | "markup", step = 0): number =>
  sellPrice(exactDecimal(cost), exactDecimal(profit), kind, exactDecimal(step)).toNumber();

test.each<[number, number, "margin" | "markup", number, number]>([
  [75, 0.25, "margin", 0, 100],
  [100, 0.25, "markup", 0, 125],
  [0, 0.3, "margin", 0, 0],
  [80, 0.3, "margin", 0.05, 114.3],
  [80, 0.3, "margin", 1, 114],
  [1.005, 0, "markup", 0.01, 1.01],
  [2.5, 0, "markup", 1, 3],
  [1.1 + 2.2, 0, "margin", 0, 3.3],
])("%p with %p %s to steps of %p sells at %p", (cost, profit, kind, step, expected) => {
  expect(price(cost, profit, kind, step)).toBe(expected);
});

test("the margin of the price and the mark-up on the cost come back out of it", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10_000_000 }), fc.integer({ min: 0, max: 999 }), (cents, permille) => {
      const cost = cents / 100;
      const profit = permille / 1000;
      const byMargin = price(cost, profit, "margin");
      const byMarkup = price(cost, profit, "markup");
      expect((byMargin - cost) / byMargin).toBeCloseTo(profit, 10);
      expect((byMarkup - cost) / cost).toBeCloseTo(profit, 10);
      // markup = margin / (1 - margin)
      expect(price(cost, profit / (1 - profit) <= 10 ? profit / (1 - profit) : 0, "markup")).toBeCloseTo(profit / (1 - profit) <= 10 ? byMargin : cost, 6);
    }),
    { seed: 17, numRuns: 500 },
  );
});

test("a rounded price is within half a step", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), fc.integer({ min: 0, max: 99 }), fc.constantFrom(0.01, 0.05, 1, 10), (cents, percent, step) => {
      const exact = price(cents / 100, percent / 100, "margin");
      expect(Math.abs(price(cents / 100, percent / 100, "margin", step) - exact)).toBeLessThanOrEqual(step / 2 + exact * 1e-15);
    }),
    { seed: 18, numRuns: 500 },
  );
});
