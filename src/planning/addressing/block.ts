import { invalid, Problem, quote } from "../text";
import { compareAddresses, formatAddress, isSameAddress, parseAddress, readAddress, type Address } from "./address";
import { explainAddress } from "./address-fault";
import type { Family } from "./family";
import { maskBits } from "./ipv4-hosts";
import { packedLength, readIPv4Prefix } from "./ipv4-text";
import { clearHostBits, hasHostBits } from "./ipv6-hosts";
import { readIPv6 } from "./ipv6-text";
import { containsAddress, formatPrefix, lastAddress, lengthStart, networkOf, parseInterface, parsePrefix, readLength, type Prefix } from "./prefix";
import { RangeList, type AddressRanges } from "./ranges";

/** A run of addresses, both ends included. */
export interface Block {
  readonly first: Address;
  readonly last: Address;
}

/**
 * Reads one block: an address, two addresses with a dash between (10.20.0.1-10.20.0.9), or a prefix without set host bits.
 *
 * Refuses a range that runs backwards or from one family to the other.
 */
export function parseBlock(text: string, argument = "taken"): Block {
  const trimmed = text.trim();
  const dash = /\s*[-–]\s*/.exec(trimmed);
  if (dash !== null) return parseRange(trimmed, trimmed.slice(0, dash.index), trimmed.slice(dash.index + dash[0].length), argument);
  if (lengthStart(trimmed) < 0) {
    const address = parseAddress(trimmed, argument);
    return { first: address, last: address };
  }
  const { address, length } = parseInterface(trimmed, argument);
  const prefix = networkOf(address, length);
  if (isSameAddress(prefix.first, address)) return { first: address, last: lastAddress(prefix) };
  const either = `all of ${formatPrefix(prefix)}, or ${formatAddress(address)} alone`;
  throw invalid(argument, text, `${argument} ${quote(trimmed)} has bits set after the /${length}: is it ${either}? Write the one meant.`);
}

function parseRange(text: string, from: string, to: string, argument: string): Block {
  if (from === "" || to === "") throw invalid(argument, text, `${argument} ${quote(text)} lacks an end. Write two addresses with a dash between, such as 10.20.0.1-10.20.0.9.`);
  const first = readAddress(from);
  if (first?.family === 4 && /^\d{1,3}$/.test(to)) {
    const meant = `${from}-${from.slice(0, from.lastIndexOf(".") + 1)}${to}`;
    throw invalid(argument, text, `${argument} ${quote(text)} has no whole address after its dash. Write ${meant}.`, meant);
  }
  const last = readAddress(to);
  if (first === null || last === null) throw explainAddress(first === null && last === null ? text : first === null ? from : to, argument).within(text);
  if (first.family !== last.family) throw invalid(argument, text, `${argument} ${quote(text)} runs from one family to the other. Write two of one family.`);
  if (compareAddresses(first, last) <= 0) return { first, last };
  const turned = `${formatAddress(last)}-${formatAddress(first)}`;
  throw invalid(argument, text, `${argument} ${quote(text)} runs backwards. Write ${turned}.`, turned);
}

/** Reads several blocks with commas or semicolons between, such as "10.20.0.1-10.20.0.9, 10.20.0.64/26". */
export function parseBlocks(text: string, argument = "reserved"): Block[] {
  return text
    .split(/[,;\n]/)
    .filter((part) => part.trim() !== "")
    .map((part) => {
      try {
        return parseBlock(part.trim(), argument);
      } catch (thrown) {
        throw thrown instanceof Problem ? thrown.within(text) : thrown;
      }
    });
}

/** Refuses a second family where one call is about one family only. */
export function refuseOtherFamily(wanted: Family, found: Family, text: string, argument: string): void {
  if (found === wanted) return;
  throw invalid(argument, text, `${argument} ${quote(text)} is IPv${found} among IPv${wanted}. Give IPv4 and IPv6 in calls of their own.`);
}

/** Gathers what texts say, each as `parseBlocks` reads it, into ranges of `family`. Refuses the other family. */
export function parseRanges(texts: readonly string[], family: Family, argument = "reserved"): AddressRanges {
  const list = new RangeList(family, texts.length);
  for (const text of texts) if (!list.addText(text)) addBlocks(list, text, argument);
  return list;
}

/** Adds the blocks of one text to a list, slowly and with sentences. */
export function addBlocks(list: RangeList, text: string, argument: string): void {
  for (const block of parseBlocks(text, argument)) {
    refuseOtherFamily(list.family, block.first.family, text, argument);
    list.addRange(block.first, block.last);
  }
}


/**
 * Tells whether a prefix contains an address, a range or a prefix, from text. Refuses what the parsers refuse, and two families.
 *
 * Two prefixes or addresses in plain form, nearly all there are, are compared as numbers, and no values are made of them.
 */
export function containsText(outer: string, inner: string, outerArgument = "prefix", innerArgument = "inner"): boolean {
  const a = readIPv4Prefix(outer);
  const b = a < 0 ? -1 : readIPv4Prefix(inner, 32);
  if (b >= 0) {
    const length = packedLength(a);
    const innerLength = packedLength(b);
    const mask = maskBits(length);
    // Under a bit operation a packed prefix is its address.
    if ((a & ~mask) === 0 && (b & ~maskBits(innerLength)) === 0) return length <= innerLength && ((a ^ b) & mask) === 0;
  }
  const inside = containsIPv6Text(outer, inner);
  if (inside !== null) return inside;
  const prefix = parsePrefix(outer, outerArgument);
  const block = parseBlock(inner, innerArgument);
  refuseOtherFamily(prefix.family, block.first.family, inner, innerArgument);
  return containsBlock(prefix, block);
}

/** Does the same for two plain IPv6 texts without set host bits; null where they are anything else. */
function containsIPv6Text(outer: string, inner: string): boolean | null {
  const slash = outer.indexOf("/");
  const length = slash < 0 ? -1 : readLength(outer, slash + 1, 6);
  const a = length < 0 ? null : readIPv6(outer, 0, slash);
  if (a === null || hasHostBits(a, length)) return null;
  const innerSlash = inner.indexOf("/");
  const innerLength = innerSlash < 0 ? 128 : readLength(inner, innerSlash + 1, 6);
  const b = innerLength < 0 ? null : readIPv6(inner, 0, innerSlash < 0 ? inner.length : innerSlash);
  if (b === null || hasHostBits(b, innerLength)) return null;
  if (innerLength < length) return false;
  clearHostBits(b, length);
  for (let group = 0; group < 8; group++) if (a[group] !== b[group]) return false;
  return true;
}

/** Tells whether every address of a block lies in a prefix. */
function containsBlock(prefix: Prefix, block: Block): boolean {
  return containsAddress(prefix, block.first) && containsAddress(prefix, block.last);
}

/** Tells whether a prefix and a block have an address in common. */
export function meetsBlock(prefix: Prefix, block: Block): boolean {
  return compareAddresses(block.first, lastAddress(prefix)) <= 0 && compareAddresses(prefix.first, block.last) <= 0;
}
