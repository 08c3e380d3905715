import { containsAddress, formatAddress, formatPrefix, parsePrefix, type Address, type Prefix } from "../../../addressing";
import { gather, gatewayAddress, isHostOf } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const gatewayOutside: Rule = {
  name: "gateway-outside",
  family: "addresses",
  weight: "stop",
  meaning: "A gateway is a host of its network; in IPv6 it may be a link-local address too.",
  check: (model) =>
    gather(model.networks.all(), (network): Remark[] => {
      const { row, prefix } = network;
      const gateway = gatewayAddress(network);
      if (prefix === null || gateway === null || canBeGateway(prefix, gateway)) return [];
      const sentence = `Gateway ${formatAddress(gateway)} is no host of ${formatPrefix(prefix)}. Write one that is, or none.`;
      return [remarkAt(model, "networks", row, "gateway", sentence)];
    }),
};

const linkLocal = parsePrefix("fe80::/10");

/** Tells whether a network can have this gateway (for IPv6 RFC 4291 sections 2.5.6 and 2.6.1). */
function canBeGateway(prefix: Prefix, gateway: Address): boolean {
  if (prefix.family === 4) return isHostOf(prefix, gateway);
  return containsAddress(prefix, gateway) || containsAddress(linkLocal, gateway);
}
