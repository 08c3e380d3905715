import type { Decimal } from "../quantity";

/**
 * Rounds an amount to the nearest multiple of `step`, halves away from zero, as a spreadsheet's ROUND does: 2.15 to 0.1 is 2.2.
 *
 * Works on the decimal digits, where 2.15 is a true half, not on a double, where it lies a little below.
 */
export function roundToStep(amount: Decimal, step: Decimal): Decimal {
  return amount.div(step).round().times(step);
}
