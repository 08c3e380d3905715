import { formatAddress } from "../../../addressing";
import { gather, addressKey, gatewayAddress, userOf } from "../../../plan/model";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const gatewayTaken: Rule = {
  name: "gateway-taken",
  family: "addresses",
  weight: "stop",
  meaning: "No port, cluster or host has the address of a gateway.",
  check: (model) => {
    const gateways = new Map<string, string>();
    for (const network of model.networks.all()) {
      const gateway = gatewayAddress(network);
      if (gateway !== null) gateways.set(addressKey(gateway, network.routing), network.row.network);
    }
    return gather(model.addresses.all(), (cell): Remark[] => {
      const { table, row, column, address, routing } = cell;
      const owner = gateways.get(addressKey(address, routing));
      if (owner === undefined) return [];
      const sentence = `${formatAddress(address)} of ${userOf(cell)} is the gateway of ${owner}. Give it another address.`;
      return [remarkOn(model, { table, row: row.row, column }, sentence)];
    });
  },
};
