import { writeCost, type Layout } from "../capacity";
import { exactDecimal, type Share } from "../quantity";
import { noAnswer } from "../text";

/**
 * Computes the host operations a second that the drives of a layout sustain together:
 * drives · rate / (reads · (1 - cache hits) + writes · write cost).
 *
 * `driveRate` is operations a second of one drive; `cacheHits` a share of the reads, which ask no drive. Writes are small and cost what they do
 * at the width of the layout. Spares and drives outside a group do no work. No answer where everything is read from the cache.
 */
export function hostOperationsPerSecond(layout: Layout, driveRate: number, readShare: Share, cacheHits: Share): number {
  const reads = exactDecimal(readShare);
  const misses = exactDecimal(cacheHits).neg().plus(1);
  const work = reads.times(misses).plus(reads.neg().plus(1).times(writeCost(layout.scheme, layout)));
  if (work.isZero()) {
    throw noAnswer("cacheHits", cacheHits, "cacheHits is 100% of nothing but reads, so the drives set no limit. Write a share below 1, such as 90%.");
  }
  return exactDecimal(driveRate).times(layout.members).div(work).toNumber();
}
