import { containsAddress, formatAddress, formatPrefix } from "../../../addressing";
import { gather } from "../../../plan/model";
import { type Remark, remarkOn, type Rule } from "../../finding";

export const addressOutsideNetwork: Rule = {
  name: "address-outside-network",
  family: "addresses",
  weight: "stop",
  meaning: "The address of a port of an array or a host lies in the network of its row.",
  check: (model) =>
    gather(model.addresses.all(), ({ table, row, column, network, address }): Remark[] => {
      if ((table !== "ports" && table !== "hostPorts") || !network?.prefix || containsAddress(network.prefix, address)) return [];
      const sentence = `${formatAddress(address)} is not in ${network.row.network} (${formatPrefix(network.prefix)}). Write an address of it, or another network.`;
      return [remarkOn(model, { table, row: row.row, column }, sentence)];
    }),
};
