import type { Family } from "./family";

/** Smallest MTU a link may have: 68 bytes for IPv4 (RFC 791 section 3.2), 1280 for IPv6 (RFC 8200 section 5). */
export function leastMtu(family: Family): number {
  return family === 4 ? 68 : 1280;
}

/**
 * Computes the payload in bytes of an echo request that just fills a packet of `mtu` bytes.
 *
 * Off go the IP header without options (IPv4 20 bytes, RFC 791; IPv6 40, RFC 8200) and the 8 bytes of the echo header (RFC 792,
 * RFC 4443).
 */
export function pingSize(mtu: number, family: Family): number {
  return mtu - (family === 4 ? 20 : 40) - 8;
}
