import { invalid, quote } from "../text";
import type { Family } from "./family";
import { maskBits } from "./ipv4-hosts";
import { readIPv4, writeIPv4 } from "./ipv4-text";

/** Makes the 32-bit mask with `length` leading ones. */
function maskValue(length: number): number {
  return maskBits(length) >>> 0;
}

/** The 33 dotted masks as text, by their lengths. */
const masks: readonly string[] = Array.from({ length: 33 }, (_, length) => writeIPv4(maskValue(length)));

/** Writes the dotted mask of an IPv4 prefix length: 24 is 255.255.255.0 (RFC 950). */
export function formatMask(length: number): string {
  return masks[length]!;
}

/** Writes the wildcard of an IPv4 prefix length, its mask inverted: 24 is 0.0.0.255. */
export function formatWildcard(length: number): string {
  return writeIPv4(~maskValue(length) >>> 0);
}

/** Writes what a console asks for beside an address: the dotted mask in IPv4, the length with its slash in IPv6. */
export function maskText(family: Family, length: number): string {
  return family === 4 ? formatMask(length) : `/${length}`;
}

/** Reads a dotted mask as its length, or answers −1 where it is no mask or has holes. */
export function readMask(text: string): number {
  const value = readIPv4(text, 0, text.length);
  if (value < 0) return -1;
  const length = Math.clz32(~value);
  return maskValue(length) === value ? length : -1;
}

/** Reads a dotted mask as its length. Refuses a mask with holes, and an inverted one, which it recognises. */
export function parseMask(text: string, argument = "mask"): number {
  const trimmed = text.trim();
  const length = readMask(trimmed);
  if (length >= 0) return length;
  const value = readIPv4(trimmed, 0, trimmed.length);
  const mask = /^\/?\d{1,2}$/.test(trimmed) ? masks[Number(trimmed.replace("/", ""))] : undefined;
  if (mask !== undefined) throw invalid(argument, text, `${argument} ${quote(trimmed)} is a length, not a dotted mask. Write ${mask}.`, mask);
  if (value < 0) throw invalid(argument, text, `${argument} ${quote(trimmed)} is not a dotted mask. Write one such as 255.255.255.0.`);
  const inverted = readMask(writeIPv4(~value >>> 0));
  if (inverted >= 0) {
    const meant = formatMask(inverted);
    throw invalid(argument, text, `${argument} ${quote(trimmed)} is a wildcard, not a mask. Write ${meant}.`, meant);
  }
  throw invalid(argument, text, `${argument} ${quote(trimmed)} has holes. The ones of a mask come first, as in ${formatMask(Math.clz32(~value))}.`);
}
