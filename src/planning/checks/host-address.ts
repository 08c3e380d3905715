import { compareAddresses, containsAddress, firstHost, lastHost, type Address, type Prefix } from "../addressing";

/** Tells whether a host of a network may hold this address: it is neither outside, nor the network's own, nor its broadcast address. */
export function isHostOf(prefix: Prefix, address: Address): boolean {
  return containsAddress(prefix, address) && compareAddresses(address, firstHost(prefix)) >= 0 && compareAddresses(address, lastHost(prefix)) <= 0;
}
