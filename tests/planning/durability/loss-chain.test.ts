import fc from "fast-check";
import { meanHoursToLoss, readFault } from "../../../src/planning/durability";
import { meanHoursByElimination, wide } from "../../support/loss-chain-by-elimination";

const none = { happens: 0, fails: 1 };

/** Numbers from 10^low to 10^high, evenly by magnitude. */
const magnitude = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true }).map((exponent) => Number((10 ** exponent).toPrecision(15)));

test("without redundancy the first failure is the loss", () => {
  expect(meanHoursToLoss({ drives: 8, tolerance: 0, failureRate: 1e-6, repairRate: 0.1, repairFault: none })).toBe(125_000);
});

test("one fault tolerated: ((2n - 1)·λ + μ) / (n·(n - 1)·λ²)", () => {
  const hours = meanHoursToLoss({ drives: 8, tolerance: 1, failureRate: 1e-5, repairRate: 1e-2, repairFault: none });
  expect(hours).toBeCloseTo((15e-5 + 1e-2) / (56 * 1e-10), 6);
});

test("a repair that always fails makes the last fault tolerated worthless but for its wait", () => {
  const hours = meanHoursToLoss({ drives: 4, tolerance: 1, failureRate: 1e-5, repairRate: 0.1, repairFault: { happens: 1, fails: 0 } });
  expect(hours).toBeCloseTo(1 / 4e-5 + 1 / (3e-5 + 0.1), 6);
});

test("agrees with elimination at 120 digits to 1e-12 over 10,000 chains of 1 to 1,000 drives", () => {
  let worst = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1000 }),
      fc.integer({ min: 0, max: 4 }),
      magnitude(3, 8),
      magnitude(-1, 4),
      (drives, wanted, mttf, repair) => {
        const tolerance = Math.min(wanted, drives - 1);
        const ours = meanHoursToLoss({ drives, tolerance, failureRate: 1 / mttf, repairRate: 1 / repair, repairFault: none });
        const exact = meanHoursByElimination({ drives, tolerance, failureRate: wide(1).div(mttf), repairRate: wide(1).div(repair), fault: wide(0) });
        const error = exact.minus(ours).div(exact).abs().toNumber();
        worst = Math.max(worst, error);
        expect(error).toBeLessThan(1e-12);
      },
    ),
    { seed: 13, numRuns: 10_000 },
  );
  // A comparison that compared nothing would find no error at all.
  expect(worst).toBeGreaterThan(0);
});

test("agrees with elimination where the last repair can fail", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 1000 }),
      fc.integer({ min: 1, max: 4 }),
      magnitude(3, 8),
      magnitude(-1, 4),
      magnitude(12, 16),
      magnitude(-18, -13),
      (drives, wanted, mttf, repair, bits, rate) => {
        const tolerance = Math.min(wanted, drives - 1);
        const wholeBits = Math.round(bits);
        const fault = wide(1).minus(wide(1).minus(rate).ln().times(wholeBits).exp());
        const ours = meanHoursToLoss({ drives, tolerance, failureRate: 1 / mttf, repairRate: 1 / repair, repairFault: readFault(wholeBits, rate) });
        const exact = meanHoursByElimination({ drives, tolerance, failureRate: wide(1).div(mttf), repairRate: wide(1).div(repair), fault });
        expect(exact.minus(ours).div(exact).abs().toNumber()).toBeLessThan(1e-12);
      },
    ),
    { seed: 14, numRuns: 200 },
  );
});
