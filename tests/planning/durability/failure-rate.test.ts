import { annualFailureRate, hourlyFailureRate } from "../../../src/planning/durability";
import { hours, share } from "../../../src/planning/quantity";

test("the hourly rate behind an annual failure rate is 1 / MTTF", () => {
  for (const mttf of [1e3, 1e5, 1.2e6, 1e8]) {
    expect(hourlyFailureRate(share(annualFailureRate(hours(mttf)))) * mttf).toBeCloseTo(1, 10);
  }
});

test("a long life keeps its digits", () => {
  // 1 - exp(-x) = x - x²/2 + ..., with x = 1e-9.
  expect(annualFailureRate(hours(8.76e12))).toBeCloseTo(1e-9 - 0.5e-18, 24);
});
