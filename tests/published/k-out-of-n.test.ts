import { kofn } from "../../src/functions/durability";

test("MIL-HDBK-338B (reproduced text): 3 of 4 parts of 0.9 work with .6561 + .2916 = 0.9477", () => {
  expect(kofn(3, 4, 0.9)).toBe(0.9477);
});

describe("the same polynomial, (R + Q)^n, from its binomial coefficients", () => {
  test.each([
    [2, 3, 0.972],
    [2, 4, 0.9963],
    [1, 4, 0.9999],
  ])("%i of %i at 0.9: %p", (k, n, probability) => {
    expect(kofn(k, n, 0.9)).toBe(probability);
  });
});
