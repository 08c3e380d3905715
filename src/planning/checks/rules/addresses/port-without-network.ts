import { formatAddress } from "../../../addressing";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";
import { networkHolding } from "../../../plan/model";

export const portWithoutNetwork: Rule = {
  name: "port-without-network",
  family: "addresses",
  weight: "warn",
  meaning: "The row of a port says which network it is on.",
  mends: "Writes the network of the site in which the address lies.",
  check: (index) =>
    index.ports.flatMap(({ row, array, address }): Remark[] => {
      if (row.network !== "" || address === null) return [];
      const holding = array === null ? null : networkHolding(index.networksOfSite(array.site), address);
      if (holding === null) return [remarkAt(index, "ports", row, "network", `This port has no network, and ${formatAddress(address)} is in none of its site. Write the network, and an address of it.`)];
      const { network } = holding.row;
      return [remarkAt(index, "ports", row, "network", `This port has no network; ${formatAddress(address)} is in ${network}. Write that.`, mendAt(index, "ports", row, "network", network))];
    }),
};
