import { ipHeaderBytes, leastMtu, type Family } from "../addressing";
import { invalid } from "../text";
import { exactDecimal, megabytesPerSecond, type MegabytesPerSecond } from "../quantity";

/** How frames are built on the links. */
export interface Framing {
  /** Largest IP packet in bytes. */
  readonly mtu: number;
  readonly ipVersion: Family;
  /** TCP timestamps, 12 bytes with their padding (RFC 7323 appendix A). */
  readonly timestamps: boolean;
  /** One IEEE 802.1Q tag, 4 bytes. */
  readonly vlan: boolean;
}

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
  const { mtu, ipVersion } = framing;
  if (mtu < leastMtu(ipVersion)) {
    throw invalid("mtu", mtu, `mtu is ${mtu}. IPv${ipVersion} needs ${leastMtu(ipVersion)} bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames.`);
  }
  const payload = mtu - ipHeaderBytes(ipVersion) - tcpHeader - (framing.timestamps ? timestampOption : 0);
  const onTheWire = mtu + ethernetOverhead + (framing.vlan ? vlanTag : 0);
  return megabytesPerSecond(exactDecimal(gigabits).times(125 * ports * payload).div(onTheWire).toNumber());
}
