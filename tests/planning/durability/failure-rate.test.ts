import { annualFailureRate, hourlyFailureRate } from "../../../src/planning/durability";
import { hours, share } from "../../../src/planning/quantity";
import { failureRate, relativeError, wide } from "../../support/loss-model-in-decimals";

test("the hourly rate behind an annual failure rate is 1 / MTTF", () => {
  for (const mttf of [1e3, 1e5, 1.2e6, 1e8]) {
    expect(hourlyFailureRate(share(annualFailureRate(hours(mttf)))) * mttf).toBeCloseTo(1, 10);
  }
});

test.each([[1], [8760], [1e6], [8.76e12]])("of a mean time of %p hours keeps its digits", (mttf) => {
  expect(relativeError(annualFailureRate(hours(mttf)), wide(1).minus(wide(-8760).div(mttf).exp()))).toBeLessThan(1e-15);
});

test.each([[1e-15], [0.015], [0.7], [0.999999999999999]])("the hourly rate behind %p keeps its digits", (afr) => {
  expect(relativeError(hourlyFailureRate(share(afr)), failureRate(afr))).toBeLessThan(1e-15);
});
