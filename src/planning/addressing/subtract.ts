import { mergeRanges } from "./merge";
import { RangeList, type AddressRanges } from "./ranges";
import { compareWords, copyWords, stepDown, stepUp } from "./words";

/**
 * Takes the addresses of `taken` out of `whole` and answers what is left, in address order.
 *
 *     whole  |------------------|   |-----|
 *     taken     |--|    |--|          |-|
 *     left   |-|    |--|    |---|   |-|  |-|
 *
 * Both may be in any order and overlap; what of `taken` lies outside `whole` changes nothing. Cost n log n.
 */
export function subtractRanges(whole: AddressRanges, taken: AddressRanges): AddressRanges {
  const { family, width } = whole;
  const from = mergeRanges(whole);
  const out = mergeRanges(taken);
  const left = new RangeList(family, from.count + out.count);
  const start = new Uint32Array(width);
  const end = new Uint32Array(width);
  let j = 0;
  for (let i = 0; i < from.count * width; i += width) {
    copyWords(from.first, i, start, 0, width);
    while (j < out.count * width && compareWords(out.last, j, start, 0, width) < 0) j += width;
    let open = true;
    while (j < out.count * width && compareWords(out.first, j, from.last, i, width) <= 0) {
      if (compareWords(out.first, j, start, 0, width) > 0) {
        copyWords(out.first, j, end, 0, width);
        stepDown(end, 0, width);
        left.addWords(start, 0, end, 0);
      }
      copyWords(out.last, j, start, 0, width);
      stepUp(start, 0, width);
      // A range that reaches past this piece may reach into the next one: it is kept for it.
      if (compareWords(out.last, j, from.last, i, width) >= 0) {
        open = false;
        break;
      }
      j += width;
    }
    if (open) left.addWords(start, 0, from.last, i);
  }
  return left;
}
