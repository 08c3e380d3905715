import type { Watts } from "../quantity";

/** How a circuit carries its load: on one phase, or on three that are loaded alike. */
export type Phases = 1 | 3;

/** Share of a breaker that may be loaded all the time, unless a code or a maker says otherwise: a planning rule. */
export const usualContinuousShare = 0.8;

/**
 * Computes the current in amperes that `watts` draw at `volts`.
 *
 * One phase: P = V·I·pf. Three phases, loaded alike, with `volts` between lines: P = √3·V·I·pf (any electrical handbook).
 */
export function current(watts: Watts, volts: number, powerFactor = 1, phases: Phases = 1): number {
  return watts / (volts * powerFactor * (phases === 3 ? Math.sqrt(3) : 1));
}

/** Computes the current in amperes that a breaker of `rating` may carry all the time. */
export function continuousLimit(rating: number, continuousShare: number): number {
  return rating * continuousShare;
}

/**
 * Computes a load as a share of what its circuit may carry all the time; above 1 it is too much.
 *
 * `continuousShare` is a planning rule: 0.8 follows from the 125 % that NFPA 70 asks of a breaker for loads of three hours and more; other
 * codes have none.
 */
export function circuitUse(watts: Watts, volts: number, rating: number, continuousShare: number, powerFactor = 1, phases: Phases = 1): number {
  return current(watts, volts, powerFactor, phases) / continuousLimit(rating, continuousShare);
}
