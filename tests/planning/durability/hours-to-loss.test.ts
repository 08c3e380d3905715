import fc from "fast-check";
import { meanHoursToLoss, type LossState } from "../../../src/planning/durability";
import { hoursByElimination, relativeError, wide } from "../../support/loss-model-in-decimals";

const state = (rates: Partial<LossState>): LossState => ({ one: 0, two: 0, repaired: 0, unread: 0, ...rates });

test("without redundancy the first failure is the loss", () => {
  expect(meanHoursToLoss([state({ one: 8e-6 })])).toBe(125_000);
});

test("one fault tolerated: ((2n - 1)·λ + μ) / (n·(n - 1)·λ²)", () => {
  const hours = meanHoursToLoss([state({ one: 8e-5 }), state({ one: 7e-5, repaired: 1e-2 })]);
  expect(hours).toBeCloseTo((15e-5 + 1e-2) / (56 * 1e-10), 6);
});

test("a repair that always fails makes the last fault tolerated worthless but for its wait", () => {
  const hours = meanHoursToLoss([state({ one: 4e-5 }), state({ one: 3e-5, unread: 0.1 })]);
  expect(hours).toBeCloseTo(1 / 4e-5 + 1 / (3e-5 + 0.1), 6);
});

test("two drives at a time pass over a state", () => {
  // 0 goes to 2 at once, 2 back to 1, 1 to the loss or to 0.
  const chain = [state({ two: 1 }), state({ one: 0, two: 3, repaired: 1 }), state({ one: 1, repaired: 3 })];
  // T0 = 1 + T2, T1 = 1/4 + T0/4, T2 = 1/4 + 3/4 T1.
  expect(meanHoursToLoss(chain)).toBeCloseTo((1 + 1 / 4 + 3 / 16) / (1 - 3 / 16), 12);
});

test("is infinite where a double cannot hold it, never no number", () => {
  const rare = Array.from({ length: 30 }, (_, failed) => state({ one: 1e-12, repaired: failed === 0 ? 0 : 1e6 }));
  expect(meanHoursToLoss(rare)).toBe(Infinity);
});

/** Rates of 10^low to 10^high, evenly by magnitude, and sometimes none. */
const rate = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true }).map((exponent) => Number((10 ** exponent).toPrecision(12)));
const rateOrNone = (low: number, high: number) => fc.oneof(fc.constant(0), rate(low, high));

test("agrees with elimination to 1e-12, whatever the rates", () => {
  const states = fc.array(fc.record({ one: rate(-9, 1), two: rateOrNone(-9, 0), repaired: rate(-4, 6), unread: rateOrNone(-9, 2) }), { minLength: 1, maxLength: 8 });
  let compared = 0;
  fc.assert(
    fc.property(states, (chain) => {
      const lost = chain.length;
      const wideRates = chain.map(({ one, two, repaired, unread }, failed) => {
        const rates = new Map([[failed + 1, wide(one)]]);
        const add = (to: number, more: number) => rates.set(to, wide(more).plus(rates.get(to) ?? 0));
        add(Math.min(failed + 2, lost), two);
        if (failed > 0) add(failed - 1, repaired);
        add(lost + 1, unread);
        return rates;
      });
      const ours = meanHoursToLoss(chain.map((one, failed) => (failed === 0 ? { ...one, repaired: 0 } : one)));
      expect(relativeError(ours, hoursByElimination([...wideRates, new Map(), new Map()]))).toBeLessThan(1e-12);
      compared++;
    }),
    { seed: 13, numRuns: 500 },
  );
  expect(compared).toBe(500);
});
