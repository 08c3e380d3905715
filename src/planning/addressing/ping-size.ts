import type { Family } from "./family";
import { ipHeaderBytes } from "./ip-packet";

/**
 * Computes the payload in bytes of an echo request that just fills a packet of `mtu` bytes.
 *
 * Off go the IP header without options and the 8 bytes of the echo header (RFC 792, RFC 4443).
 */
export function pingSize(mtu: number, family: Family): number {
  return mtu - ipHeaderBytes(family) - 8;
}
