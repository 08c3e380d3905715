import { exactDecimal } from "../quantity";

/** Computes 1 - `part` with all its digits, near 1 as well, where the difference of two doubles would have lost them. */
export function complementOf(part: number): number {
  return part < 0.5 ? 1 - part : exactDecimal(part).neg().plus(1).toNumber();
}

/** Computes ln(1 - `part`) with all its digits at both ends; -Infinity for 1. */
export function logOfComplement(part: number): number {
  return part < 0.5 ? Math.log1p(-part) : Math.log(complementOf(part));
}
