import { bytes, exactFraction, type Bytes, type Fraction, type Share } from "../quantity";

/** Computes the logical capacity after data reduction, with the usable capacity filled to `fill`; rounded down to a whole byte. */
export function effectiveBytes(usable: Bytes, reduction: Fraction, fill: Share): Bytes {
  const filled = exactFraction(fill);
  return bytes((usable * reduction.numerator * filled.numerator) / (reduction.denominator * filled.denominator));
}
