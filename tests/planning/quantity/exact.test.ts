import fc from "fast-check";
import { Decimal, divideToNearest, exactDecimal, exactFraction, readAs15Digits } from "../../../src/planning/quantity";

describe("a number is read at 15 significant digits", () => {
  test.each([
    [1.1 + 2.2, 3.3],
    [0.1 + 0.2, 0.3],
    [1 - 0.9, 0.1],
    [4, 4],
    [123456789012345680, 123456789012346000],
    [1e-20 / 3, 3.33333333333333e-21],
  ])("%p is read as %p", (value, read) => {
    expect(readAs15Digits(value)).toBe(read);
  });

  test("what was read stays what it is when it is read again", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: 1e-300, max: 1e300 }), (value) => {
        expect(readAs15Digits(readAs15Digits(value))).toBe(readAs15Digits(value));
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

test("decimals carry forty digits, and halves go away from zero", () => {
  expect(new Decimal(1).div(3).toString()).toBe("0.3333333333333333333333333333333333333333");
  expect(new Decimal("2.5").toDecimalPlaces(0).toNumber()).toBe(3);
  expect(new Decimal("-2.5").toDecimalPlaces(0).toNumber()).toBe(-3);
});

describe("the exact value behind a number", () => {
  test.each([
    [0.2, "0.2"],
    [1.1 + 2.2, "3.3"],
    [3.84, "3.84"],
  ])("behind %p stands the decimal %s", (value, digits) => {
    expect(exactDecimal(value).toString()).toBe(digits);
  });

  test("a fraction is the same value as the decimal", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: 1e-18, max: 1e18 }), (value) => {
        const { numerator, denominator } = exactFraction(value);
        expect(exactDecimal(value).times(denominator.toString()).eq(numerator.toString())).toBe(true);
      }),
      { seed: 2, numRuns: 500 },
    );
  });
});

test.each([
  [5n, 2n, 3n],
  [4n, 3n, 1n],
  [0n, 7n, 0n],
])("%p / %p rounds to the nearest, %p", (numerator, denominator, quotient) => {
  expect(divideToNearest(numerator, denominator)).toBe(quotient);
});
