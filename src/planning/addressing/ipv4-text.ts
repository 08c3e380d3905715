/**
 * Reads the dotted decimal between `from` and `to` as a number from 0 to 2^32 − 1, or answers −1 where it is not one.
 *
 * Exactly four octets, each 0 to 255 in decimal. A leading zero is not read: some programs take such an octet for octal.
 */
export function readIPv4(text: string, from: number, to: number): number {
  let value = 0;
  let octet = 0;
  let digits = 0;
  let dots = 0;
  for (let at = from; at < to; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit >= 0 && digit <= 9) {
      if (digits > 0 && octet === 0) return -1;
      octet = octet * 10 + digit;
      if (octet > 255) return -1;
      digits++;
    } else {
      if (digit !== -2 || digits === 0) return -1;
      value = (value << 8) | octet;
      octet = 0;
      digits = 0;
      dots++;
    }
  }
  return dots === 3 && digits > 0 ? ((value << 8) | octet) >>> 0 : -1;
}

/**
 * The halves of an address as text, `10.20.` and `0.9`, each made when it is first written: writing an address is then one joining of
 * two texts, twice as quick as joining four octets. All of them together, which few lists need, take some five megabytes.
 */
const upperHalves: string[] = new Array<string>(0x1_0000).fill("");
const lowerHalves: string[] = new Array<string>(0x1_0000).fill("");

/** Writes a number from 0 to 2^32 − 1 as dotted decimal. */
export function writeIPv4(value: number): string {
  const high = value >>> 16;
  const low = value & 0xffff;
  const upper = upperHalves[high]!;
  const lower = lowerHalves[low]!;
  return (upper === "" ? (upperHalves[high] = `${high >>> 8}.${high & 255}.`) : upper) + (lower === "" ? (lowerHalves[low] = `${low >>> 8}.${low & 255}`) : lower);
}

/** An IPv4 prefix in one number: the length times 2^32, plus the address. */
export type PackedIPv4 = number;

/** Takes the address out of a packed prefix. */
export function packedAddress(packed: PackedIPv4): number {
  return packed >>> 0;
}

/** Takes the length out of a packed prefix. */
export function packedLength(packed: PackedIPv4): number {
  return (packed / 0x1_0000_0000) | 0;
}

/**
 * Reads `10.20.0.9/24` as one number, or answers −1 where the text is anything else. A bare address gets the length `bareLength`, and
 * is not read where that is −1.
 *
 * The quick way through long lists: one pass and nothing made. What it does not read (masks, blanks, IPv6, mistakes) is left to the
 * parsers that can say what is wrong.
 */
export function readIPv4Prefix(text: string, bareLength = -1): PackedIPv4 {
  const end = text.length;
  let value = 0;
  // −1 stands for an octet without a digit yet.
  let octet = -1;
  let dots = 0;
  let at = 0;
  for (; at < end; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit >= 0) {
      if (digit > 9 || octet === 0) return -1;
      octet = octet < 0 ? digit : octet * 10 + digit;
    } else if (digit === -2) {
      if (octet < 0 || octet > 255) return -1;
      value = (value << 8) | octet;
      octet = -1;
      dots++;
    } else if (digit === -1) break;
    else return -1;
  }
  if (dots !== 3 || octet < 0 || octet > 255) return -1;
  const address = ((value << 8) | octet) >>> 0;
  if (at === end) return bareLength < 0 ? -1 : bareLength * 0x1_0000_0000 + address;
  const tens = text.charCodeAt(at + 1) - 48;
  if (!(tens >= 0 && tens <= 9)) return -1;
  if (at + 2 === end) return tens * 0x1_0000_0000 + address;
  const ones = text.charCodeAt(at + 2) - 48;
  if (at + 3 !== end || tens === 0 || !(ones >= 0 && ones <= 9)) return -1;
  const length = tens * 10 + ones;
  return length > 32 ? -1 : length * 0x1_0000_0000 + address;
}
