import { containsAddress, formatAddress, formatPrefix } from "../../../addressing";
import { gather } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const sharedAddressOutside: Rule = {
  name: "shared-address-outside",
  family: "addresses",
  weight: "stop",
  meaning: "The shared address of a cluster lies in the cluster's network.",
  check: (model) =>
    gather(model.addresses.all(), ({ table, row, address, network }): Remark[] => {
      if (table !== "clusters" || !network?.prefix || containsAddress(network.prefix, address)) return [];
      const sentence = `${formatAddress(address)} is not in ${network.row.network} (${formatPrefix(network.prefix)}), the network of its cluster. Write an address of it.`;
      return [remarkAt(model, "clusters", row, "sharedAddress", sentence)];
    }),
};
