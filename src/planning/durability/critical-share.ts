/**
 * Computes which share of the stripes of one failed drive touches all of `failed` drives, where every stripe of a code spread over
 * `drives` takes `width` of them, each choice equally often: the product of (width - j) / (drives - j), j from 1 to failed - 1.
 *
 * 1 for one failed drive, and for stripes as wide as the drives. For two it is the declustering ratio of Holland and Gibson (1992).
 */
export function criticalShare(drives: number, width: number, failed: number): number {
  let share = 1;
  for (let other = 1; other < failed; other++) share *= (width - other) / (drives - other);
  return share;
}
