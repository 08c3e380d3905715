import type { AddressRanges } from "./ranges";
import { compareWords, sortedOrder } from "./words";

/** Two overlapping prefixes, by their places in the list; `first` stands before `second` there. */
export interface Clash {
  readonly first: number;
  readonly second: number;
}

/** The overlapping pairs that were asked for, in list order, and how many there are in all. */
export interface Clashes {
  readonly pairs: readonly Clash[];
  readonly total: number;
}

/**
 * Finds the pairs of prefixes of one family that overlap; two equal ones do.
 *
 * Prefixes nest or are apart, so in address order, the larger one first, all prefixes still open at a point contain it:
 *
 *     |-----------------------|        open at x: three, each of which
 *       |----------|  |-----|          overlaps every other
 *           x |--|
 *
 * The cost is n log n plus the pairs listed; those past `most` are counted only.
 */
export function findClashes(prefixes: AddressRanges, most = Infinity): Clashes {
  const { first, last, width, count } = prefixes;
  const order = sortedOrder(first, count, width, largestFirst(prefixes));
  const pairs: Clash[] = [];
  const open: number[] = [];
  let total = 0;
  for (const index of order) {
    while (open.length > 0 && compareWords(last, open[open.length - 1]! * width, first, index * width, width) < 0) open.pop();
    total += open.length;
    for (let i = 0; i < open.length && pairs.length < most; i++) {
      const other = open[i]!;
      pairs.push(other < index ? { first: other, second: index } : { first: index, second: other });
    }
    open.push(index);
  }
  pairs.sort((a, b) => a.first - b.first || a.second - b.second);
  return { pairs, total };
}

/** Orders prefixes by where they end, the furthest first: of those that begin together the larger then comes first. */
function largestFirst({ last, width, count }: AddressRanges): Uint32Array {
  return sortedOrder(last, count, width).slice().reverse();
}
