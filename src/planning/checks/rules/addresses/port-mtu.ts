import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

/** What a network carries where its row says nothing. */
const usualMtu = 1500;

export const portMtu: Rule = {
  name: "port-mtu",
  family: "addresses",
  weight: "warn",
  meaning: "A port has the MTU of its network, or none of its own.",
  mends: "Writes the MTU of the network.",
  check: (index) =>
    index.ports.flatMap(({ row, network }): Remark[] => {
      if (row.mtu === null || network === null) return [];
      const mtu = network.row.mtu ?? usualMtu;
      if (row.mtu === mtu) return [];
      return [remarkAt(index, "ports", row, "mtu", `MTU ${row.mtu} is not that of ${network.row.network}, ${mtu}: large packets would be lost. Write ${mtu}.`, mendAt(index, "ports", row, "mtu", mtu))];
    }),
};
