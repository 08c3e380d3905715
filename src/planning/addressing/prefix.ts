import { invalid, quote, type Problem } from "../text";
import { Address, compareAddresses, formatAddress, readAddress } from "./address";
import { explainPrefix } from "./address-fault";
import { bitsOf, type Family } from "./family";
import { lastIPv4, maskBits, networkIPv4 } from "./ipv4-hosts";
import { readMask } from "./netmask";

/** A prefix in its one canonical form: its lowest address, and how many leading bits are fixed. Frozen. */
export class Prefix {
  /** `first` must have no bits set after `length`: use `networkOf` where that is not known. */
  constructor(
    readonly first: Address,
    readonly length: number,
  ) {
    Object.freeze(this);
  }

  get family(): Family {
    return this.first.family;
  }

  /** Writes the canonical text, as `formatPrefix` does. */
  toString(): string {
    return formatPrefix(this);
  }
}

/** One address together with the prefix it lies in, such as 10.20.0.9/24. Frozen. */
export class Interface {
  constructor(
    readonly address: Address,
    readonly length: number,
  ) {
    Object.freeze(this);
  }

  /** Prefix that the address lies in. */
  get network(): Prefix {
    return networkOf(this.address, this.length);
  }
}

/** Makes the prefix of `length` that `address` lies in. */
export function networkOf(address: Address, length: number): Prefix {
  return new Prefix(firstOf(address, length), length);
}

/** Computes the last address of a prefix. */
export function lastAddress(prefix: Prefix): Address {
  const { family, word0, word1, word2, word3 } = prefix.first;
  const { length } = prefix;
  if (family === 4) return new Address(4, 0, 0, 0, lastIPv4(word3, length));
  return new Address(
    6,
    (word0 | ~mask(length)) >>> 0,
    (word1 | ~mask(length - 32)) >>> 0,
    (word2 | ~mask(length - 64)) >>> 0,
    (word3 | ~mask(length - 96)) >>> 0,
  );
}

/** Computes the address of the network that `address` lies in: all bits after `length` cleared. */
export function firstOf(address: Address, length: number): Address {
  const { family, word0, word1, word2, word3 } = address;
  if (family === 4) return new Address(4, 0, 0, 0, networkIPv4(word3, length));
  return new Address(
    6,
    (word0 & mask(length)) >>> 0,
    (word1 & mask(length - 32)) >>> 0,
    (word2 & mask(length - 64)) >>> 0,
    (word3 & mask(length - 96)) >>> 0,
  );
}

/** Makes one word whose first `bits` bits are set; none below 0, all above 32. */
function mask(bits: number): number {
  return maskBits(bits <= 0 ? 0 : bits >= 32 ? 32 : bits);
}

/** Tells whether every address of `inner` is one of `outer`. False across families. */
export function containsPrefix(outer: Prefix, inner: Prefix): boolean {
  return outer.length <= inner.length && containsAddress(outer, inner.first);
}

/** Tells whether `address` is one of `prefix`. False across families. */
export function containsAddress(prefix: Prefix, address: Address): boolean {
  const { first, length } = prefix;
  if (first.family !== address.family) return false;
  if (first.family === 4) return ((first.word3 ^ address.word3) & mask(length)) === 0;
  return (
    ((first.word0 ^ address.word0) & mask(length)) === 0 &&
    ((first.word1 ^ address.word1) & mask(length - 32)) === 0 &&
    ((first.word2 ^ address.word2) & mask(length - 64)) === 0 &&
    ((first.word3 ^ address.word3) & mask(length - 96)) === 0
  );
}

/** Tells whether two prefixes share an address: then one contains the other. False across families. */
export function overlaps(a: Prefix, b: Prefix): boolean {
  return a.length <= b.length ? containsPrefix(a, b) : containsPrefix(b, a);
}

/** Writes a prefix in its one canonical form, such as 10.20.0.0/24. */
export function formatPrefix(prefix: Prefix): string {
  return formatAddress(prefix.first) + lengthText(prefix.length);
}

const lengthTexts: readonly string[] = Array.from({ length: 129 }, (_, length) => `/${length}`);

/** Writes a prefix length with its slash, such as /24. */
export function lengthText(length: number): string {
  return lengthTexts[length]!;
}

/**
 * Reads `10.20.0.9/24`, `10.20.0.9 255.255.255.0`, `10.20.0.9/255.255.255.0` or an IPv6 address with its length.
 *
 * The address may be any of its subnet. A bare address is refused: its subnet is not known.
 */
export function parseInterface(text: string, argument = "prefix"): Interface {
  const trimmed = text.trim();
  const at = lengthStart(trimmed);
  if (at < 0) {
    const address = readAddress(trimmed);
    if (address === null) throw explainPrefix(trimmed, at, argument);
    const whole = formatAddress(address) + lengthText(bitsOf(address.family));
    throw invalid(argument, text, `${argument} ${quote(trimmed)} has no length. Write it with one, such as ${whole} for this one address.`);
  }
  const address = readAddress(trimmed, 0, at);
  if (address === null) throw explainPrefix(trimmed, at, argument);
  const length = readLength(trimmed, at + 1, address.family);
  if (length < 0) throw explainLength(trimmed, at + 1, address.family, argument);
  return new Interface(address, length);
}

/** Reads a prefix as `parseInterface` does, but refuses bits set after its length and says which prefix they lie in. */
export function parsePrefix(text: string, argument = "prefix"): Prefix {
  const { address, length } = parseInterface(text, argument);
  const network = networkOf(address, length);
  if (compareAddresses(network.first, address) === 0) return network;
  const meant = formatPrefix(network);
  throw invalid(argument, text, `${argument} ${quote(text.trim())} has bits set after the /${length}. Write ${meant}.`, meant);
}

/** Finds where the address ends and its length or mask begins: the slash, or else the blank; −1 where there is neither. */
export function lengthStart(text: string): number {
  const slash = text.indexOf("/");
  return slash >= 0 ? slash : text.indexOf(" ");
}

/** Reads the prefix length in decimal, or as a dotted mask for IPv4, from `from` to the end; −1 where it is neither. */
export function readLength(text: string, from: number, family: Family): number {
  let length = 0;
  const digits = text.length - from;
  if (digits < 1 || digits > 3) return family === 4 ? readMask(text.slice(from).trim()) : -1;
  for (let at = from; at < text.length; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9 || (length === 0 && at > from)) return -1;
    length = length * 10 + digit;
  }
  return length <= bitsOf(family) ? length : -1;
}

/** Says why the text from `from` is not a length of `family`. */
function explainLength(text: string, from: number, family: Family, argument: string): Problem {
  const length = text.slice(from).trim();
  const most = bitsOf(family);
  const start = `${argument} ${quote(text)}`;
  if (family === 4 && length.includes(".")) {
    return invalid(argument, text, `${start}: ${quote(length)} is not a mask. Its ones must come first, as in 255.255.255.0.`);
  }
  if (/^\d+$/.test(length) && Number(length) <= most) {
    const meant = `${text.slice(0, from - 1).trim()}/${Number(length)}`;
    return invalid(argument, text, `${start} has a length with a leading zero. Write ${meant}.`, meant);
  }
  const example = family === 4 ? "10.20.0.0/24" : "2001:db8::/64";
  return invalid(argument, text, `${start} has no length from 0 to ${most} after the address. Write it like ${example}.`);
}
