import { addressValue, type Address } from "./address";
import { hostBits } from "./hosts";
import { lastAddress, type Prefix } from "./prefix";

/** Labels of an address for reverse look-up, the lowest first: octets in IPv4, hexadecimal digits in IPv6. */
function labels(address: Address): string[] {
  if (address.family === 4) return [0, 8, 16, 24].map((shift) => String((address.word3 >>> shift) & 255));
  return addressValue(address).toString(16).padStart(32, "0").split("").reverse();
}

function root(address: Address): string {
  return address.family === 4 ? "in-addr.arpa" : "ip6.arpa";
}

/** Writes the name under which an address is looked up in reverse (RFC 1035 section 3.5, RFC 3596 section 2.5), in lower case. */
export function reverseName(address: Address): string {
  return [...labels(address), root(address)].join(".");
}

/** The reverse zones of a prefix: how many, the first and last by name, and the document that names them. */
export interface ReverseZones {
  readonly count: number;
  readonly first: string;
  readonly last: string;
  readonly source: string;
}

/**
 * Finds the reverse zones that hold exactly the names of a prefix.
 *
 * Zones end at an octet (IPv4) or a hexadecimal digit (IPv6), so a prefix between two such ends has several: a /18 has 64. IPv4 subnets
 * longer than /24 have a classless zone of their own, first address and length before the /24 zone (RFC 2317 section 4).
 */
export function reverseZones(prefix: Prefix): ReverseZones {
  const { family, length, first } = prefix;
  const source = family === 4 ? "RFC 1035" : "RFC 3596";
  if (family === 4 && length > 24 && length < 32) {
    const [host, ...rest] = labels(first);
    const zone = [`${host!}/${length}`, ...rest, root(first)].join(".");
    return { count: 1, first: zone, last: zone, source: "RFC 2317" };
  }
  const labelBits = family === 4 ? 8 : 4;
  const left = Math.floor(hostBits(prefix) / labelBits);
  const step = 1n << BigInt(left * labelBits);
  const zoneOf = (address: Address): string => [...labels(address).slice(left), root(address)].join(".");
  const last = lastAddress(prefix);
  const count = Number((addressValue(last) - addressValue(first) + 1n) / step);
  return { count, first: zoneOf(first), last: zoneOf(last), source };
}

/** Where the PTR record of an address stands: in a zone, under a name relative to it. */
export interface ReversePlace {
  readonly zone: string;
  readonly name: string;
}

/**
 * Finds the zone of a prefix in which the PTR record of one of its addresses stands, and its name there.
 *
 * In an IPv4 subnet longer than /24 that is its classless zone; `parent` is then where the owner of the /24 zone points to it with a CNAME
 * record (RFC 2317 section 4).
 */
export function reversePlace(address: Address, prefix: Prefix): ReversePlace & { readonly parent: ReversePlace | null } {
  const all = labels(address);
  if (prefix.family === 4 && prefix.length > 24 && prefix.length < 32) {
    const [name = "", ...rest] = all;
    return { zone: reverseZones(prefix).first, name, parent: { zone: [...rest, root(address)].join("."), name } };
  }
  const left = Math.max(1, Math.floor(hostBits(prefix) / (address.family === 4 ? 8 : 4)));
  return { zone: [...all.slice(left), root(address)].join("."), name: all.slice(0, left).join("."), parent: null };
}
