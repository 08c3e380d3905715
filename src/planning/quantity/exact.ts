import DecimalJs from "decimal.js";
import { memoise } from "./memoise";

/**
 * Decimal arithmetic at 40 significant digits, rounding half away from zero as a spreadsheet does.
 *
 * A clone of its own, so that no other user of the library can change these settings.
 */
export const Decimal = DecimalJs.clone({ precision: 40, rounding: DecimalJs.ROUND_HALF_UP });
export type Decimal = DecimalJs;

/** A non-negative exact fraction of two whole numbers. */
export interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/**
 * Takes a double to the nearest value of 15 significant digits, which is what a sheet shows of it: 1.1 + 2.2 is 3.3.
 *
 * Distinct values of 15 digits are distinct doubles, so a value read this way stands for exactly one decimal: `exactDecimal` and
 * `exactFraction` give it back without loss.
 */
export function readAs15Digits(value: number): number {
  return Number.isInteger(value) && Math.abs(value) < 1e15 ? value : Number(value.toPrecision(15));
}

/** Gives the exact decimal behind a double, read at 15 significant digits. */
export function exactDecimal(value: number): Decimal {
  return new Decimal(value.toPrecision(15));
}

/** Gives the exact fraction behind a non-negative double, read at 15 significant digits: 0.2 is 2/10. */
export const exactFraction: (value: number) => Fraction = memoise((value: number): Fraction => {
  if (Number.isInteger(value) && value < 1e15) return { numerator: BigInt(value), denominator: 1n };
  const [digits, exponent] = value.toExponential(14).split("e") as [string, string];
  const shift = 14 - Number(exponent);
  const significand = BigInt(digits.replace(".", ""));
  return shift >= 0
    ? { numerator: significand, denominator: 10n ** BigInt(shift) }
    : { numerator: significand * 10n ** BigInt(-shift), denominator: 1n };
});

/** Divides whole numbers that are not negative and rounds to the nearest, halves up. */
export function divideToNearest(numerator: bigint, denominator: bigint): bigint {
  return (2n * numerator + denominator) / (2n * denominator);
}
