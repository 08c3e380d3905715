import { foldName, invalid, quote } from "../text";
import { compareAddresses, formatAddress, type Address } from "./address";
import { firstHost, lastHost } from "./hosts";
import { uniteRanges } from "./merge";
import { containsAddress, formatPrefix, overlaps, type Prefix } from "./prefix";
import { RangeList, type AddressRanges } from "./ranges";

/** A network that ports are given addresses in. */
export interface PortNetwork {
  readonly name: string;
  readonly prefix: Prefix;
  /** Gateway, or null for none. It is never given away. */
  readonly gateway: Address | null;
  /** Further addresses never given away, of the family of the prefix. */
  readonly reserved?: AddressRanges | null;
  /** Routing table the network belongs to: networks of one must be apart. The common one where left out. */
  readonly routing?: string | null;
  readonly row: number;
}

/** Gathers what a network never gives away: its gateway and what is reserved. */
export function takenByNetwork({ prefix, gateway, reserved }: PortNetwork): AddressRanges {
  const own = new RangeList(prefix.family);
  if (gateway !== null && gateway.family === prefix.family) own.addRange(gateway, gateway);
  return reserved === undefined || reserved === null ? own : uniteRanges([own, reserved]);
}

/** Refuses networks that cannot stand together: none, a name twice, a gateway that is no host, two that overlap within one routing table. */
export function checkNetworks(networks: readonly PortNetwork[]): void {
  if (networks.length === 0) throw invalid("networks", null, "networks has no rows. Give a name, a prefix such as 10.20.1.0/24 and a gateway or none.");
  refuseTwice(networks, "networks");
  networks.forEach(({ row, prefix, gateway, routing }, place) => {
    const here = `networks row ${row}`;
    if (gateway !== null && !canBeGateway(prefix, gateway)) {
      const text = formatAddress(gateway);
      throw invalid(here, text, `${here}: gateway ${text} is no host of ${formatPrefix(prefix)}. Write one that is, or none.`);
    }
    for (const other of networks.slice(0, place)) {
      if (foldName(other.routing ?? "") === foldName(routing ?? "") && overlaps(prefix, other.prefix)) {
        const text = formatPrefix(prefix);
        throw invalid(here, text, `${here}: ${text} overlaps ${formatPrefix(other.prefix)} in row ${other.row}. Give networks that are apart.`);
      }
    }
  });
}

/**
 * Tells whether a network can have this gateway: one of its hosts.
 *
 * In IPv6 also its subnet-router anycast address, and the link-local address of a router, in fe80::/10 (RFC 4291 sections 2.5.6, 2.6.1).
 */
function canBeGateway(prefix: Prefix, gateway: Address): boolean {
  if (prefix.family === 6) return containsAddress(prefix, gateway) || (gateway.family === 6 && gateway.word0 >>> 22 === 0x3fa);
  return gateway.family === 4 && compareAddresses(gateway, firstHost(prefix)) >= 0 && compareAddresses(gateway, lastHost(prefix)) <= 0;
}

/** Refuses a name that stands in two rows of an argument. */
export function refuseTwice(rows: readonly { readonly name: string; readonly row: number }[], argument: string): void {
  const seen = new Map<string, number>();
  for (const { name, row } of rows) {
    const folded = foldName(name);
    const earlier = seen.get(folded);
    if (earlier !== undefined) {
      const place = `${argument} row ${row}`;
      throw invalid(place, name, `${place} ${quote(name)} stands in row ${earlier} already. Give each name once.`);
    }
    seen.set(folded, row);
  }
}
