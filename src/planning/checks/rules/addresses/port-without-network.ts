import { formatAddress } from "../../../addressing";
import { gather } from "../../../plan/model";
import { mendAt, type Remark, remarkAt, type Rule } from "../../finding";

export const portWithoutNetwork: Rule = {
  name: "port-without-network",
  family: "addresses",
  weight: "warn",
  meaning: "The row of a port says which network it is on.",
  mends: "Writes the network of the site in which the address lies.",
  check: (model) =>
    gather(model.ports.all(), ({ row, array, address }): Remark[] => {
      if (row.network !== "" || address === null) return [];
      const holding = array === null ? null : model.networks.holding(array.site, address);
      if (holding === null) {
        const sentence = `This port has no network, and ${formatAddress(address)} is in none of its site. Write the network, and an address of it.`;
        return [remarkAt(model, "ports", row, "network", sentence)];
      }
      const { network } = holding.row;
      const sentence = `This port has no network; ${formatAddress(address)} is in ${network}. Write that.`;
      return [remarkAt(model, "ports", row, "network", sentence, mendAt(model, "ports", row, "network", network))];
    }),
};
