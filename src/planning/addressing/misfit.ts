import type { AddressRanges } from "./ranges";
import { compareWords, sortedOrder } from "./words";

/** A range that cannot stand: its place in the list, and that of the range it meets, or null where it is not free. */
export interface Misfit {
  readonly index: number;
  readonly meets: number | null;
}

/**
 * Finds a range of `held` that does not lie wholly within one range of `free`, or that meets another one of `held`.
 *
 * `free` is disjoint and in address order, with room between its ranges. The lowest such range by address; null where all stand.
 */
export function findMisfit(held: AddressRanges, free: AddressRanges): Misfit | null {
  const { first, last, width, count } = held;
  const order = sortedOrder(first, count, width);
  let range = 0;
  for (let i = 0; i < count; i++) {
    const at = order[i]! * width;
    while (range < free.count && compareWords(free.last, range * width, first, at, width) < 0) range++;
    const begins = range < free.count && compareWords(free.first, range * width, first, at, width) <= 0;
    if (!begins || compareWords(free.last, range * width, last, at, width) < 0) return { index: order[i]!, meets: null };
    // All before this one are apart, so the one just before reaches furthest.
    if (i > 0 && compareWords(last, order[i - 1]! * width, first, at, width) >= 0) return { index: order[i]!, meets: order[i - 1]! };
  }
  return null;
}
