import { gather } from "../../../plan/model";
import { mendAt, type Remark, remarkAt, type Rule } from "../../finding";

export const portMtu: Rule = {
  name: "port-mtu",
  family: "addresses",
  weight: "warn",
  meaning: "A port of an array or a host has the MTU of its network, or none of its own.",
  mends: "Writes the MTU of the network.",
  check: (model) =>
    gather(model.wiring.all(), ({ table, row, network }): Remark[] => {
      if (row.mtu === null || network?.isIp !== true) return [];
      const { mtu } = network;
      if (row.mtu === mtu) return [];
      const sentence = `MTU ${row.mtu} is not that of ${network.row.network}, ${mtu}: large packets would be lost. Write ${mtu}.`;
      return [remarkAt(model, table, row, "mtu", sentence, mendAt(model, table, row, "mtu", mtu))];
    }),
};
