import { formatAddress } from "../../../addressing";
import { addressCells, addressKey, userOf } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const gatewayTaken: Rule = {
  name: "gateway-taken",
  family: "addresses",
  weight: "stop",
  meaning: "No port, cluster or host has the address of a gateway.",
  check: (index) => {
    const gateways = new Map<string, string>();
    for (const { row, gateway, routing } of index.networks) {
      if (gateway !== null && typeof gateway !== "string") gateways.set(addressKey(gateway, routing), row.network);
    }
    return addressCells(index).flatMap((cell): Remark[] => {
      const { table, row, column, address, network } = cell;
      const owner = gateways.get(addressKey(address, network?.routing ?? ""));
      if (owner === undefined) return [];
      return [remarkAt(index, table, row, column as never, `${formatAddress(address)} of ${userOf(cell)} is the gateway of ${owner}. Give it another address.`)];
    });
  },
};
