import type { Decimal } from "../quantity";
import { roundToStep } from "./round-to-step";

/** What the share is of: "margin", of the price; "markup", of the cost. */
export const profitKinds = ["margin", "markup"] as const;
export type ProfitKind = (typeof profitKinds)[number];

/**
 * Computes the price that leaves `profit` of itself ("margin", below 1) or adds `profit` to the cost ("markup").
 *
 * `step` 0 leaves it unrounded; otherwise it is rounded to the nearest multiple of `step`, halves away from zero.
 */
export function sellPrice(cost: Decimal, profit: Decimal, kind: ProfitKind, step: Decimal): Decimal {
  const price = kind === "margin" ? cost.div(profit.neg().plus(1)) : cost.times(profit.plus(1));
  return step.isZero() ? price : roundToStep(price, step);
}
