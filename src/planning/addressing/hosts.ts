import { invalid, noAnswer, quote } from "../text";
import { Address, addressAt, addressValue } from "./address";
import { bitsOf } from "./family";
import { firstHostIPv4, lastHostIPv4 } from "./ipv4-hosts";
import { formatPrefix, lastAddress, type Prefix } from "./prefix";

/** How many bits of a prefix number its hosts. */
export function hostBits(prefix: Prefix): number {
  return bitsOf(prefix.family) - prefix.length;
}

/** Counts every address of a prefix. */
export function countAddresses(prefix: Prefix): bigint {
  return 1n << BigInt(hostBits(prefix));
}

/**
 * Finds the first address that a host may hold.
 *
 * The address after the network's own: all zeros names the subnet in IPv4 (RFC 950) and is the subnet-router anycast address in IPv6
 * (RFC 4291 section 2.6.1). A /31 (RFC 3021) and a /127 (RFC 6164) give up nothing; a /32 and a /128 are one host.
 */
export function firstHost(prefix: Prefix): Address {
  const { first, length } = prefix;
  if (first.family === 4) return new Address(4, 0, 0, 0, firstHostIPv4(first.word3, length));
  if (hostBits(prefix) <= 1) return first;
  return new Address(6, first.word0, first.word1, first.word2, first.word3 + 1);
}

/** Finds the last address that a host may hold: in IPv4 the one before the broadcast address, in IPv6 the last of all. */
export function lastHost(prefix: Prefix): Address {
  if (prefix.family === 6) return lastAddress(prefix);
  return new Address(4, 0, 0, 0, lastHostIPv4(prefix.first.word3, prefix.length));
}

/**
 * Counts the addresses of a prefix that hosts may hold.
 *
 * IPv4 2^(32−n) − 2, but 2 for a /31 (RFC 3021) and 1 for a /32. IPv6 2^(128−n) − 1 for the subnet-router anycast address
 * (RFC 4291), but 2 for a /127 (RFC 6164) and 1 for a /128.
 */
export function countHosts(prefix: Prefix): bigint {
  const all = countAddresses(prefix);
  if (hostBits(prefix) <= 1) return all;
  return prefix.family === 4 ? all - 2n : all - 1n;
}

/** Finds the host at `position`: 1 is the first, −1 the last. Refuses 0; no answer where the prefix has fewer hosts. */
export function hostAt(prefix: Prefix, position: bigint, argument = "position"): Address {
  if (position === 0n) throw invalid(argument, 0, `${argument} is 0. Count from 1, the first host, or from -1, the last.`);
  const count = countHosts(prefix);
  const index = position > 0n ? position - 1n : count + position;
  if (index < 0n || index >= count) {
    throw noAnswer(argument, position, `${argument} ${position} is past the ${count} ${count === 1n ? "host" : "hosts"} of ${formatPrefix(prefix)}. Write a smaller one.`);
  }
  return addressAt(prefix.family, addressValue(firstHost(prefix)) + index);
}

/** Finds the broadcast address of an IPv4 prefix. Refuses IPv6; no answer for a /31 (RFC 3021) and a /32, which have none. */
export function broadcastAddress(prefix: Prefix, argument = "prefix"): Address {
  const text = formatPrefix(prefix);
  if (prefix.family === 6) throw invalid(argument, text, `${argument} ${quote(text)} is IPv6, which has no broadcast address. Give an IPv4 prefix.`);
  const why = prefix.length === 31 ? "both addresses of a /31 are hosts (RFC 3021)" : "a /32 is one host";
  if (hostBits(prefix) <= 1) throw noAnswer(argument, text, `${argument} ${quote(text)} has no broadcast address: ${why}. Give a /30 or larger.`);
  return lastAddress(prefix);
}
