import { noAnswer, type Problem } from "../text";
import type { Address } from "./address";
import { assignableRanges } from "./assignable";
import { FreeAddresses } from "./free-addresses";
import { formatPrefix, type Prefix } from "./prefix";
import type { AddressRanges } from "./ranges";
import { subtractRanges } from "./subtract";

/**
 * Finds the lowest `count` host addresses of a prefix that are not taken. No answer where it has fewer.
 *
 * Passes over what `assignableRanges` leaves out. The cost depends on what is taken and asked for, never on the size of the prefix.
 */
export function findFreeAddresses(prefix: Prefix, taken: AddressRanges, count: number): Address[] {
  const free = new FreeAddresses(subtractRanges(assignableRanges(prefix), taken));
  const found: Address[] = [];
  while (found.length < count) {
    const address = free.take();
    if (address === null) throw tooFew(prefix, found.length, count);
    found.push(address);
  }
  return found;
}

function tooFew(prefix: Prefix, found: number, count: number): Problem {
  const left = found === 0 ? "no free address left" : `only ${found} free ${found === 1 ? "address" : "addresses"}, not ${count}`;
  return noAnswer("prefix", formatPrefix(prefix), `prefix ${formatPrefix(prefix)} has ${left}. Give a larger one.`);
}
