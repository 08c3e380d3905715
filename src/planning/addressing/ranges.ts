import { Address } from "./address";
import { bitsOf, wordsOf, type Family } from "./family";
import { lastIPv4, networkIPv4 } from "./ipv4-hosts";
import { packedAddress, packedLength, readIPv4Prefix } from "./ipv4-text";
import { hasHostBits } from "./ipv6-hosts";
import { readIPv6, type Groups } from "./ipv6-text";
import { lastAddress, readLength, type Prefix } from "./prefix";
import { copyWords, type Words } from "./words";

/**
 * Ranges of addresses of one family, in columns: range i runs from the address at `first[i · width]` to the one at `last[i · width]`,
 * both included. See `words.ts` for the form.
 */
export interface AddressRanges {
  readonly family: Family;
  readonly width: number;
  readonly count: number;
  readonly first: Words;
  readonly last: Words;
}

/**
 * Gathers ranges of one family one by one, in columns that grow.
 *
 * One list lives for good: an engine that has collected the last instance of a class forgets its layout, and throws away the code it
 * had compiled for it. Every recalculation would begin cold then.
 */
export class RangeList implements AddressRanges {
  static readonly lasting = new RangeList(4, 0);

  readonly width: number;
  first: Words;
  last: Words;
  count = 0;

  constructor(
    readonly family: Family,
    room = 16,
  ) {
    this.width = wordsOf(family);
    this.first = new Uint32Array(room * this.width);
    this.last = new Uint32Array(room * this.width);
  }

  /** Adds the range from `first` to `last`, which must be of this family and in this order. */
  addRange(first: Address, last: Address): void {
    this.addWords(wordsOfAddress(first), 0, wordsOfAddress(last), 0);
  }

  addPrefix(prefix: Prefix): void {
    this.addRange(prefix.first, lastAddress(prefix));
  }

  /** Adds the range whose ends stand at `at` and `bt`. */
  addWords(first: Words, at: number, last: Words, bt: number): void {
    const end = this.roomForOne();
    copyWords(first, at, this.first, end, this.width);
    copyWords(last, bt, this.last, end, this.width);
  }

  /**
   * Adds what the text says, where it is plainly an address or a strict prefix of this family, and tells whether it did.
   *
   * The quick way through long lists. False means nothing more than "look closer": it may be a range, have a mask, or be wrong.
   */
  addText(text: string): boolean {
    if (this.family === 4) {
      const packed = readIPv4Prefix(text, 32);
      const value = packedAddress(packed);
      const length = packedLength(packed);
      if (packed < 0 || networkIPv4(value, length) !== value) return false;
      const at = this.roomForOne();
      this.first[at] = value;
      this.last[at] = lastIPv4(value, length);
      return true;
    }
    const slash = text.indexOf("/");
    const groups = readIPv6(text, 0, slash < 0 ? text.length : slash);
    const length = slash < 0 ? 128 : readLength(text, slash + 1, 6);
    return groups !== null && length >= 0 && this.addGroups(groups, length);
  }

  private addGroups(groups: Groups, length: number): boolean {
    if (hasHostBits(groups, length)) return false;
    const at = this.roomForOne();
    for (let word = 0; word < 4; word++) {
      const value = (groups[2 * word]! << 16) | groups[2 * word + 1]!;
      const free = (word + 1) * 32 - length;
      this.first[at + word] = value;
      this.last[at + word] = free <= 0 ? value : free >= 32 ? -1 : value | ((1 << free) - 1);
    }
    return true;
  }

  private roomForOne(): number {
    const at = this.count * this.width;
    if (at === this.first.length) {
      this.first = doubled(this.first);
      this.last = doubled(this.last);
    }
    this.count++;
    return at;
  }
}

function doubled(words: Words): Words {
  const longer = new Uint32Array(Math.max(16, words.length * 2));
  longer.set(words);
  return longer;
}

/** Copies an address into words of its own. */
function wordsOfAddress(address: Address): Words {
  return address.family === 4
    ? Uint32Array.of(address.word3)
    : Uint32Array.of(address.word0, address.word1, address.word2, address.word3);
}

/** Makes the address that stands at `at`. */
export function addressOfWords(words: Words, at: number, family: Family): Address {
  return family === 4
    ? new Address(4, 0, 0, 0, words[at]!)
    : new Address(6, words[at]!, words[at + 1]!, words[at + 2]!, words[at + 3]!);
}

/** Gathers whole prefixes of one family as ranges, in their order. */
export function rangesOfPrefixes(family: Family, prefixes: readonly Prefix[]): AddressRanges {
  const list = new RangeList(family, prefixes.length);
  for (const prefix of prefixes) list.addPrefix(prefix);
  return list;
}

/** Counts the addresses in disjoint ranges. */
export function countInRanges(ranges: AddressRanges): bigint {
  let sum = 0n;
  for (let i = 0; i < ranges.count; i++) {
    sum += valueAt(ranges.last, i * ranges.width, ranges.family) - valueAt(ranges.first, i * ranges.width, ranges.family) + 1n;
  }
  return sum;
}

function valueAt(words: Words, at: number, family: Family): bigint {
  let value = 0n;
  for (let k = 0; k < bitsOf(family) / 32; k++) value = (value << 32n) | BigInt(words[at + k]!);
  return value;
}
