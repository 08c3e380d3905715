import type { Address } from "./address";
import { assignableRanges } from "./assignable";
import { FreeAddresses } from "./free-addresses";
import type { Prefix } from "./prefix";
import type { AddressRanges } from "./ranges";
import { subtractRanges } from "./subtract";

/**
 * Finds the lowest `count` host addresses of a prefix that are not taken; fewer where it has no more.
 *
 * Passes over what `assignableRanges` leaves out. The cost depends on what is taken and asked for, never on the size of the prefix.
 */
export function findFreeAddresses(prefix: Prefix, taken: AddressRanges, count: number): Address[] {
  const free = new FreeAddresses(subtractRanges(assignableRanges(prefix), taken));
  const found: Address[] = [];
  while (found.length < count) {
    const address = free.take();
    if (address === null) break;
    found.push(address);
  }
  return found;
}
