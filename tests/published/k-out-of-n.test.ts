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

test("Lyons, Vanderkulk 1962: two of three modules, 3·R² - 2·R³ (from memory), no better than one at a half", () => {
  for (const works of [0.1, 0.5, 0.9, 0.99]) expect(kofn(2, 3, works)).toBeCloseTo(3 * works ** 2 - 2 * works ** 3, 15);
  expect(kofn(2, 3, 0.5)).toBe(0.5);
});
