import { writeCost, type Layout } from "../capacity";
import { exactDecimal, type Share } from "../quantity";

/**
 * Computes the host operations a second that the drives of a layout sustain together: drives · rate / (reads + writes · write cost).
 *
 * `driveRate` is operations a second of one drive. Spares and drives outside a group do no work. Small random operations, no cache.
 */
export function hostOperationsPerSecond(layout: Layout, driveRate: number, readShare: Share): number {
  const reads = exactDecimal(readShare);
  const work = reads.plus(reads.neg().plus(1).times(writeCost(layout.scheme, layout)));
  return exactDecimal(driveRate).times(layout.members).div(work).toNumber();
}
