import { bitsOf } from "./family";
import { writeIPv4 } from "./ipv4-text";
import { writeIPv6 } from "./ipv6-text";
import { lengthText, Prefix } from "./prefix";
import { addressOfWords, type AddressRanges } from "./ranges";
import { copyWords, differingBits, hasLowBitsSet, setLowBits, stepUp, trailingZeros, type Words } from "./words";

/** Lists the fewest prefixes that cover exactly the addresses of disjoint ranges, in the order of the ranges. */
export function coverByPrefixes(ranges: AddressRanges): Prefix[] {
  const prefixes: Prefix[] = [];
  eachPrefix(ranges, (words, at, length) => prefixes.push(new Prefix(addressOfWords(words, at, ranges.family), length)));
  return prefixes;
}

/** Does as `coverByPrefixes` and writes each prefix as canonical text at once. */
export function coverAsText(ranges: AddressRanges): string[] {
  if (ranges.family === 4) return coverIPv4AsText(ranges);
  const texts: string[] = [];
  eachPrefix(ranges, (words, at, length) =>
    texts.push(writeIPv6(words[at]!, words[at + 1]!, words[at + 2]!, words[at + 3]!) + lengthText(length)),
  );
  return texts;
}

/** Cuts IPv4 ranges as `eachPrefix` does, in plain numbers. */
function coverIPv4AsText({ first, last, count }: AddressRanges): string[] {
  const texts: string[] = [];
  for (let i = 0; i < count; i++) {
    const end = last[i]!;
    for (let start = first[i]!; ; ) {
      const differing = 32 - Math.clz32(start ^ end);
      const zeros = start === 0 ? 32 : 31 - Math.clz32(start & -start);
      let block = zeros < differing ? zeros : differing;
      if (block === differing && (end & lowBits(block)) >>> 0 !== lowBits(block)) block--;
      texts.push(writeIPv4(start) + lengthText(32 - block));
      const reached = (start | lowBits(block)) >>> 0;
      if (reached === end) break;
      start = reached + 1;
    }
  }
  return texts;
}

/** Makes a number of `bits` ones. A shift by 32 is a shift by 0, hence the end. */
function lowBits(bits: number): number {
  return bits === 0 ? 0 : 0xffff_ffff >>> (32 - bits);
}

/**
 * Cuts each range into its largest aligned blocks from the left.
 *
 * A block of 2^k addresses can begin where the address ends in k zeros, and fits where it does not pass the end. Where start and end
 * differ first in bit t from the right, the start has a 0 there and the end a 1: any block below t fits, and one of 2^t only when it
 * is the whole range.
 */
function eachPrefix(ranges: AddressRanges, visit: (words: Words, at: number, length: number) => void): void {
  const { family, width, first, last } = ranges;
  const bits = bitsOf(family);
  const start = new Uint32Array(width);
  const end = new Uint32Array(width);
  for (let at = 0; at < ranges.count * width; at += width) {
    copyWords(first, at, start, 0, width);
    for (;;) {
      const differing = differingBits(start, 0, last, at, width);
      let block = Math.min(trailingZeros(start, 0, width), differing);
      if (block === differing && !hasLowBitsSet(last, at, width, block)) block--;
      visit(start, 0, bits - block);
      copyWords(start, 0, end, 0, width);
      setLowBits(end, 0, width, block);
      if (differingBits(end, 0, last, at, width) === 0) break;
      copyWords(end, 0, start, 0, width);
      stepUp(start, 0, width);
    }
  }
}
