import type { Layout } from "../capacity";
import type { Hours, Share } from "../quantity";
import { invalid } from "../text";
import { complementOf } from "./complement";
import { criticalShare } from "./critical-share";
import type { Chance } from "./read-fault";

/** Most failures tolerated that the chain is worked out for. */
const mostTolerated = 100;

/** Rates an hour at which a group leaves one of its states. */
export interface LossState {
  /** One drive more fails. */
  readonly one: number;
  /** Two drives more fail by a cause they share. */
  readonly two: number;
  /** One drive fewer is failed. */
  readonly repaired: number;
  /** A repair reads what cannot be read, with nothing left to correct it: data is lost. */
  readonly unread: number;
}

/**
 * How one group loses data: a state for every number of failed drives from 0 to m, the most that are tolerated. More than m is a loss.
 *
 *            two                two
 *      .-------------.    .-------------.
 *     0 ----> 1 ----> 2 ... ----> m ----> lost by drives
 *       <----   <----     <----   '-----> lost by reading
 */
export type LossChain = readonly LossState[];

/** What the rates of a chain depend on besides the layout. */
export interface ChainRates {
  /** Failures of one drive an hour, λ. */
  readonly failureRate: number;
  /** Share of a drive's failures that take a second drive with them, β. */
  readonly sharedCause: Share;
  /** Mean hours from a first failure to its repair, R. */
  readonly repair: Hours;
  /** Hours of `repair` that pass before anything is copied, D; at most `repair`. */
  readonly wait: Hours;
  /** Whether a repair with m drives failed meets what it cannot read. */
  readonly unread: Chance;
}

/**
 * Builds the chain of one group of `layout`; a spread scheme is one group over all its drives.
 *
 * With f drives working, one fails at f·(1 - β)·λ and two at f·β·λ/2, so that each drive fails at λ; the last drive fails alone.
 * Refuses a layout that tolerates more than `mostTolerated` failures.
 */
export function buildLossChain(layout: Layout, rates: ChainRates): LossChain {
  const { redundancy: tolerance, scheme } = layout;
  if (tolerance > mostTolerated) {
    throw invalid("scheme", scheme.name, `scheme ${scheme.name} survives ${tolerance} failures. Write one that survives at most ${mostTolerated}.`);
  }
  return Array.from({ length: tolerance + 1 }, (_, failed): LossState => {
    const working = layout.members / layout.groups - failed;
    const shared = working === 1 ? 0 : rates.sharedCause;
    const repairs = failed === 0 ? 0 : 1 / repairHours(layout, failed, rates);
    const unread = failed === tolerance ? rates.unread : { happens: 0, fails: 1 };
    return {
      one: working * complementOf(shared) * rates.failureRate,
      two: (working * shared * rates.failureRate) / 2,
      repaired: repairs * unread.fails,
      unread: repairs * unread.happens,
    };
  });
}

/** A repair shorter than this is over at once; its rate still fits into a double. */
const shortestRepair = 1e-300;

/**
 * Computes the mean hours of a repair with `failed` drives failed. A group that is not spread copies a whole drive, at the same pace in
 * every state. A spread scheme first restores the stripes that touch every failed drive, with all working drives:
 * D + (R - D) · s(i) · (n - 1) / (n - i), s(i) the critical share. Only the copying shrinks, not the waiting.
 */
function repairHours({ scheme, members, data, redundancy }: Layout, failed: number, { repair, wait }: ChainRates): number {
  if (scheme.grouping !== "spread") return repair;
  const copying = (repair - wait) * criticalShare(members, data + redundancy, failed) * ((members - 1) / (members - failed));
  return Math.max(wait + copying, shortestRepair);
}
