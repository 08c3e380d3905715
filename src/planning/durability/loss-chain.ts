import type { Chance } from "./read-fault";

/**
 * A set of drives that loses data once more than `tolerance` of them are failed at the same time.
 *
 *     0 --n·λ--> 1 --(n-1)·λ--> 2 ... m --(n-m)·λ + μ·h--> loss
 *       <--μ---    <----μ----     <--μ·(1-h)-- (out of state m)
 */
export interface LossChain {
  /** Drives n. */
  readonly drives: number;
  /** Failures m that are survived; less than `drives`. */
  readonly tolerance: number;
  /** Failures of one drive an hour, λ. */
  readonly failureRate: number;
  /** Repairs an hour, one at a time, μ. */
  readonly repairRate: number;
  /** Whether the last repair, out of state m, meets what it cannot read, h. */
  readonly repairFault: Chance;
}

/**
 * Computes the mean hours until data is lost, from all drives whole.
 *
 * Exact for the birth-death chain: with t(i) the mean time from i failed drives to i + 1, t(i) = (1 + back(i) · t(i-1)) / onward(i), and
 * the answer is their sum. Only positive numbers are added, multiplied and divided, so no digits are lost however rare the loss.
 * Assumes exponential failures and repairs, drives independent of each other. Infinity where a double cannot hold it.
 */
export function meanHoursToLoss({ drives, tolerance, failureRate, repairRate, repairFault }: LossChain): number {
  let total = 0;
  let toNext = 0;
  for (let failed = 0; failed <= tolerance; failed++) {
    const failing = (drives - failed) * failureRate;
    const last = failed === tolerance && failed > 0;
    const onward = last ? failing + repairRate * repairFault.happens : failing;
    const back = failed === 0 ? 0 : last ? repairRate * repairFault.fails : repairRate;
    toNext = (1 + back * toNext) / onward;
    total += toNext;
    // Past a double's range the rest cannot shorten it, and 0 · Infinity must not arise.
    if (total === Infinity) return total;
  }
  return total;
}
