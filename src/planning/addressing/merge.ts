import { RangeList, type AddressRanges } from "./ranges";
import { compareWords, copyWords, isNext, sortedOrder } from "./words";

/**
 * Joins ranges that overlap or touch: the answer covers the same addresses by the fewest ranges, in address order, with room between.
 *
 *     |-----|  |---|          |---------|
 *        |-----|        ->    |---------|     |--|
 *                   |--|
 *
 * One sort by first address, one sweep: n log n at most.
 */
export function mergeRanges(ranges: AddressRanges): AddressRanges {
  const { first, last, width, count, family } = ranges;
  const merged = new RangeList(family, Math.max(count, 1));
  const order = sortedOrder(first, count, width);
  let open = -1;
  for (let i = 0; i < count; i++) {
    const at = order[i]! * width;
    if (open >= 0 && (compareWords(first, at, merged.last, open, width) <= 0 || isNext(merged.last, open, first, at, width))) {
      if (compareWords(last, at, merged.last, open, width) > 0) copyWords(last, at, merged.last, open, width);
    } else {
      open = merged.count * width;
      merged.addWords(first, at, last, at);
    }
  }
  return merged;
}

/** Joins the addresses of several sets of ranges of one family into one. */
export function uniteRanges(sets: readonly AddressRanges[]): AddressRanges {
  const all = new RangeList(sets[0]!.family, sets.reduce((sum, set) => sum + set.count, 1));
  for (const set of sets) for (let i = 0; i < set.count; i++) all.addWords(set.first, i * set.width, set.last, i * set.width);
  return mergeRanges(all);
}
