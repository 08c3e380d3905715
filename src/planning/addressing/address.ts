import { explainAddress } from "./address-fault";
import { bitsOf, type Family } from "./family";
import { readIPv4, writeIPv4 } from "./ipv4-text";
import { readIPv6, writeIPv6 } from "./ipv6-text";

/**
 * One IPv4 or IPv6 address: a frozen value of four 32-bit words, the highest first.
 *
 * An IPv4 address stands in `word3` alone. An IPv4-mapped IPv6 address is an IPv6 address: it equals no IPv4 address.
 */
export class Address {
  constructor(
    readonly family: Family,
    readonly word0: number,
    readonly word1: number,
    readonly word2: number,
    readonly word3: number,
  ) {
    Object.freeze(this);
  }

  /** Writes the canonical text, as `formatAddress` does. */
  toString(): string {
    return formatAddress(this);
  }
}

/** Reads an address, or answers null where `text` is not one. No blanks around it, no length, no zone. */
export function readAddress(text: string, from = 0, to = text.length): Address | null {
  const ipv4 = readIPv4(text, from, to);
  if (ipv4 >= 0) return new Address(4, 0, 0, 0, ipv4);
  const groups = readIPv6(text, from, to);
  if (groups === null) return null;
  return new Address(6, word(groups[0], groups[1]), word(groups[2], groups[3]), word(groups[4], groups[5]), word(groups[6], groups[7]));
}

function word(high: number, low: number): number {
  return ((high << 16) | low) >>> 0;
}

/** Reads an address in any spelling of its family. Refuses everything else with what to write instead. */
export function parseAddress(text: string, argument = "address"): Address {
  const trimmed = text.trim();
  const address = readAddress(trimmed);
  if (address === null) throw explainAddress(trimmed, argument);
  return address;
}

/** Writes an address in its one canonical form: dotted decimal, or RFC 5952 with mixed notation for IPv4-mapped addresses. */
export function formatAddress(address: Address): string {
  return address.family === 4 ? writeIPv4(address.word3) : writeIPv6(address.word0, address.word1, address.word2, address.word3);
}

/** Orders addresses: IPv4 before IPv6, then by value. Negative, zero or positive. */
export function compareAddresses(a: Address, b: Address): number {
  return a.family - b.family || a.word0 - b.word0 || a.word1 - b.word1 || a.word2 - b.word2 || a.word3 - b.word3;
}

/** Tells whether two addresses are the same, family included. */
export function isSameAddress(a: Address, b: Address): boolean {
  return compareAddresses(a, b) === 0;
}

/** Turns an address into its value, 0 to 2^32 − 1 or 2^128 − 1. */
export function addressValue(address: Address): bigint {
  const low = BigInt(address.word3);
  if (address.family === 4) return low;
  return (BigInt(address.word0) << 96n) | (BigInt(address.word1) << 64n) | (BigInt(address.word2) << 32n) | low;
}

/** Makes the address of `family` whose value is `value`. Throws RangeError outside the family: callers check first. */
export function addressAt(family: Family, value: bigint): Address {
  if (value < 0n || value >> BigInt(bitsOf(family)) !== 0n) throw new RangeError(`no IPv${family} address has this value`);
  const wordAt = (shift: bigint): number => Number((value >> shift) & 0xffff_ffffn);
  return family === 4
    ? new Address(4, 0, 0, 0, Number(value))
    : new Address(6, wordAt(96n), wordAt(64n), wordAt(32n), wordAt(0n));
}
