import { complementOf, logOfComplement } from "../../../src/planning/durability/complement";
import { relativeError, wide } from "../../support/loss-model-in-decimals";

test.each([[0], [1e-15], [0.1], [0.4], [0.5], [0.6], [0.9], [0.999999999999999]])("1 - %p and its logarithm keep their digits", (part) => {
  expect(relativeError(complementOf(part), wide(1).minus(part))).toBeLessThan(1e-15);
  if (part > 0) expect(relativeError(logOfComplement(part), wide(1).minus(part).ln())).toBeLessThan(1e-15);
});

test("at the ends", () => {
  expect(logOfComplement(0)).toBe(-0);
  expect(logOfComplement(1)).toBe(-Infinity);
});
