import { invalid } from "../text";
import { addressAt, addressValue } from "./address";
import { bitsOf } from "./family";
import { formatPrefix, Prefix } from "./prefix";

/** Refuses a subnet that is larger than the prefix it is to lie in. */
export function refuseShorter(prefix: Prefix, length: number): void {
  if (length >= prefix.length) return;
  throw invalid("length", length, `length ${length} is larger than prefix ${formatPrefix(prefix)} itself. Write a length from ${prefix.length} to ${bitsOf(prefix.family)}.`);
}

/**
 * Lists the subnets of `length` in a prefix, in address order: all of them, or the first `most` where it is given.
 *
 * Refuses to list more than `limit` unless `most` says how many are wanted.
 */
export function splitPrefix(prefix: Prefix, length: number, most: number | null, limit: number): Prefix[] {
  refuseShorter(prefix, length);
  const count = 1n << BigInt(length - prefix.length);
  if (most === null && count > BigInt(limit)) {
    throw invalid("most", most, `prefix ${formatPrefix(prefix)} has ${count} subnets of /${length}. Say in most how many to list, such as 100.`);
  }
  const listed = Number(most !== null && BigInt(most) < count ? most : count);
  const step = 1n << BigInt(bitsOf(prefix.family) - length);
  const first = addressValue(prefix.first);
  return Array.from({ length: listed }, (_, index) => new Prefix(addressAt(prefix.family, first + BigInt(index) * step), length));
}
