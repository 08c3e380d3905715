import { compareAddresses, type Address } from "./address";

/** An address that stands in a list more than once, and where. */
export interface Repeat {
  readonly address: Address;
  /** Places in the list, ascending. */
  readonly places: readonly number[];
}

/** Finds the addresses that occur twice or more, in the order of their first place. An IPv4-mapped address is not its IPv4 address. */
export function findRepeats(addresses: readonly Address[]): Repeat[] {
  const order = addresses.map((_, place) => place).sort((a, b) => compareAddresses(addresses[a]!, addresses[b]!) || a - b);
  const repeats: Repeat[] = [];
  for (let start = 0, end = 0; start < order.length; start = end) {
    const address = addresses[order[start]!]!;
    while (end < order.length && compareAddresses(addresses[order[end]!]!, address) === 0) end++;
    if (end - start > 1) repeats.push({ address, places: order.slice(start, end) });
  }
  return repeats.sort((a, b) => a.places[0]! - b.places[0]!);
}
