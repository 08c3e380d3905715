import type { Family } from "./family";

/** Smallest MTU a link may have: 68 bytes for IPv4 (RFC 791 section 3.2), 1280 for IPv6 (RFC 8200 section 5). */
export function leastMtu(family: Family): number {
  return family === 4 ? 68 : 1280;
}

/** Bytes of an IP header without options: 20 for IPv4 (RFC 791 section 3.1), 40 for IPv6 (RFC 8200 section 3). */
export function ipHeaderBytes(family: Family): number {
  return family === 4 ? 20 : 40;
}
