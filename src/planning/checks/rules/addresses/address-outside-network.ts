import { containsAddress, formatAddress, formatPrefix } from "../../../addressing";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const addressOutsideNetwork: Rule = {
  name: "address-outside-network",
  family: "addresses",
  weight: "stop",
  meaning: "The address of a port lies in the network of its row.",
  check: (model) =>
    model.ports.all().flatMap(({ row, network, address }): Remark[] => {
      if (address === null || !network?.prefix || containsAddress(network.prefix, address)) return [];
      const sentence = `${formatAddress(address)} is not in ${network.row.network} (${formatPrefix(network.prefix)}). Write an address of it, or another network.`;
      return [remarkAt(model, "ports", row, "address", sentence)];
    }),
};
