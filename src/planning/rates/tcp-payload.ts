import { invalid } from "../text";
import { exactDecimal, megabytesPerSecond, type MegabytesPerSecond } from "../quantity";

export const ipVersions = [4, 6] as const;
export type IpVersion = (typeof ipVersions)[number];

/** How frames are built on the links. */
export interface Framing {
  /** Largest IP packet in bytes. */
  readonly mtu: number;
  readonly ipVersion: IpVersion;
  /** TCP timestamps, 12 bytes with their padding (RFC 7323 appendix A). */
  readonly timestamps: boolean;
  /** One IEEE 802.1Q tag, 4 bytes. */
  readonly vlan: boolean;
}

/** Bytes of the IP header without options, and the smallest MTU of a link (RFC 791; RFC 8200 sections 3 and 5). */
const ip = { 4: { header: 20, leastMtu: 68 }, 6: { header: 40, leastMtu: 1280 } } as const;
const tcpHeader = 20;
const timestampOption = 12;
/** Preamble 8, header 14, check sequence 4, gap 12 (IEEE 802.3; RFC 5180 appendix A.1 for preamble and gap). */
const ethernetOverhead = 38;
const vlanTag = 4;

/**
 * Computes the TCP payload that `ports` links of `gigabits` each carry in one direction, in 10^6 bytes a second.
 *
 * Every frame is full: (MTU - headers) of payload in MTU + 38 bytes on the wire, 42 with a VLAN tag. Loss and acknowledgements are not
 * counted.
 */
export function tcpPayload(ports: number, gigabits: number, framing: Framing): MegabytesPerSecond {
  const { header, leastMtu } = ip[framing.ipVersion];
  if (framing.mtu < leastMtu) {
    throw invalid("mtu", framing.mtu, `mtu is ${framing.mtu}. IPv${framing.ipVersion} needs ${leastMtu} bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames.`);
  }
  const payload = framing.mtu - header - tcpHeader - (framing.timestamps ? timestampOption : 0);
  const onTheWire = framing.mtu + ethernetOverhead + (framing.vlan ? vlanTag : 0);
  return megabytesPerSecond(exactDecimal(gigabits).times(125 * ports * payload).div(onTheWire).toNumber());
}
