/**
 * Arithmetic on addresses that stand as runs of 32-bit words in an array, the highest word first.
 *
 * Sets of addresses are kept in such columns rather than as objects: a hundred thousand prefixes are then sorted and swept in a few
 * milliseconds. `width` is the number of words an address has, 1 or 4, and `at` the index of its first word.
 */
export type Words = Uint32Array;

/** Orders two addresses by value. Negative, zero or positive. */
export function compareWords(a: Words, at: number, b: Words, bt: number, width: number): number {
  for (let k = 0; k < width; k++) {
    const difference = a[at + k]! - b[bt + k]!;
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Tells whether `b` is the address after `a`. Nothing comes after the last address of a family. */
export function isNext(a: Words, at: number, b: Words, bt: number, width: number): boolean {
  let k = width - 1;
  for (; k >= 0 && a[at + k] === 0xffff_ffff; k--) if (b[bt + k] !== 0) return false;
  if (k < 0 || b[bt + k] !== a[at + k]! + 1) return false;
  for (k--; k >= 0; k--) if (b[bt + k] !== a[at + k]) return false;
  return true;
}

/** Copies one address. */
export function copyWords(from: Words, at: number, to: Words, bt: number, width: number): void {
  for (let k = 0; k < width; k++) to[bt + k] = from[at + k]!;
}

/** Steps an address to the next one; the last address of the family becomes all zeros. */
export function stepUp(words: Words, at: number, width: number): void {
  for (let k = width - 1; k >= 0; k--) {
    const raised = words[at + k]! + 1;
    words[at + k] = raised;
    if (raised <= 0xffff_ffff) return;
  }
}

/** Steps an address to the one before it; all zeros becomes the last address of the family. */
export function stepDown(words: Words, at: number, width: number): void {
  for (let k = width - 1; k >= 0; k--) {
    const lowered = words[at + k]! - 1;
    words[at + k] = lowered;
    if (lowered >= 0) return;
  }
}

/** Counts the zero bits at the end of an address; all its bits where it is all zeros. */
export function trailingZeros(words: Words, at: number, width: number): number {
  for (let k = width - 1; k >= 0; k--) {
    const word = words[at + k]!;
    if (word !== 0) return (width - 1 - k) * 32 + 31 - Math.clz32(word & -word);
  }
  return width * 32;
}

/** Counts the bits from the highest one in which two addresses differ down to the last; 0 where they are the same. */
export function differingBits(a: Words, at: number, b: Words, bt: number, width: number): number {
  for (let k = 0; k < width; k++) {
    const difference = a[at + k]! ^ b[bt + k]!;
    if (difference !== 0) return (width - k) * 32 - Math.clz32(difference);
  }
  return 0;
}

/** Sets the last `bits` bits of an address. */
export function setLowBits(words: Words, at: number, width: number, bits: number): void {
  for (let k = width - 1, left = bits; left > 0; k--, left -= 32) {
    words[at + k] = left >= 32 ? 0xffff_ffff : words[at + k]! | ((1 << left) - 1);
  }
}

/** Tells whether the last `bits` bits of an address are all set. */
export function hasLowBitsSet(words: Words, at: number, width: number, bits: number): boolean {
  for (let k = width - 1, left = bits; left > 0; k--, left -= 32) {
    const wanted = left >= 32 ? 0xffff_ffff : (1 << left) - 1;
    if ((words[at + k]! & wanted) >>> 0 !== wanted >>> 0) return false;
  }
  return true;
}

/**
 * Orders `count` addresses by value, least digit first, and answers their indices; equal ones keep the order they have in `start`.
 *
 * One counting pass a byte, so the cost grows as the number of addresses; a byte in which all addresses agree costs nothing more.
 */
export function sortedOrder(words: Words, count: number, width: number, start?: Uint32Array): Uint32Array {
  let from = start ?? identity(count);
  if (isSorted(words, from, width)) return from;
  let to: Uint32Array = new Uint32Array(count);
  const tally = new Uint32Array(256);
  for (let k = width - 1; k >= 0; k--) {
    for (let shift = 0; shift < 32; shift += 8) {
      tally.fill(0);
      for (let i = 0; i < count; i++) tally[(words[i * width + k]! >>> shift) & 255]!++;
      if (tally[(words[k]! >>> shift) & 255] === count) continue;
      for (let digit = 0, sum = 0; digit < 256; digit++) {
        const here = tally[digit]!;
        tally[digit] = sum;
        sum += here;
      }
      for (let i = 0; i < count; i++) {
        const index = from[i]!;
        to[tally[(words[index * width + k]! >>> shift) & 255]!++] = index;
      }
      [from, to] = [to, from === start ? new Uint32Array(count) : from];
    }
  }
  return from;
}

function identity(count: number): Uint32Array {
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  return order;
}

function isSorted(words: Words, order: Uint32Array, width: number): boolean {
  for (let i = 1; i < order.length; i++) {
    if (compareWords(words, order[i - 1]! * width, words, order[i]! * width, width) > 0) return false;
  }
  return true;
}
