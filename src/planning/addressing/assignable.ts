import { addressAt, addressValue } from "./address";
import { firstHost, hostBits, lastHost } from "./hosts";
import { lastAddress, type Prefix } from "./prefix";
import { RangeList, type AddressRanges } from "./ranges";
import { subtractRanges } from "./subtract";

/**
 * Finds the addresses of a prefix that a plan may give to devices: its hosts without the reserved subnet anycast identifiers.
 *
 * Those are the 128 highest interface identifiers of an IPv6 subnet; in a /64 the ones with the universal bit off, fdff:ffff:ffff:ff80
 * to fdff:ffff:ffff:ffff (RFC 2526 section 2). A subnet with identifiers of 7 bits or fewer has no room for them and keeps all.
 */
export function assignableRanges(prefix: Prefix): AddressRanges {
  const hosts = new RangeList(prefix.family);
  hosts.addRange(firstHost(prefix), lastHost(prefix));
  const anycast = anycastRange(prefix);
  return anycast === null ? hosts : subtractRanges(hosts, anycast);
}

/** Finds the reserved subnet anycast addresses of a prefix (RFC 2526), or null where it has none. */
export function anycastRange(prefix: Prefix): AddressRanges | null {
  if (prefix.family === 4 || hostBits(prefix) <= 7) return null;
  // In a /64 the identifiers are EUI-64 ones: the seventh bit, universal or local, is 0 in those that are reserved.
  const universalBit = prefix.length === 64 ? 1n << 57n : 0n;
  const last = addressValue(lastAddress(prefix)) - universalBit;
  const reserved = new RangeList(6);
  reserved.addRange(addressAt(6, last - 127n), addressAt(6, last));
  return reserved;
}
