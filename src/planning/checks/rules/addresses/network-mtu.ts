import { leastMtu } from "../../../addressing";
import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

/** No packet is longer: its length is said in 16 bits (RFC 791 section 3.1, RFC 8200 section 3). */
const mostBytes = 65_535;

export const networkMtu: Rule = {
  name: "network-mtu",
  family: "addresses",
  weight: "stop",
  meaning: "The MTU of a network is one that a link may have: 68 to 65535 bytes in IPv4 (RFC 791), 1280 and more in IPv6 (RFC 8200).",
  check: (model) =>
    gather(model.networks.all(), ({ row, isIp, prefix }): Remark[] => {
      const family = prefix?.family ?? 4;
      if (!isIp || row.mtu === null || (row.mtu >= leastMtu(family) && row.mtu <= mostBytes)) return [];
      const sentence = `MTU ${row.mtu} of ${row.network} is none that IPv${family} can have. Write ${leastMtu(family)} to ${mostBytes}, such as 1500, or 9000 for jumbo frames.`;
      return [remarkAt(model, "networks", row, "mtu", sentence)];
    }),
};
