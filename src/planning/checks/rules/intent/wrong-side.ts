import { gather, portLabel, type Network } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

export const wrongSide: Rule = {
  name: "wrong-side",
  family: "intent",
  weight: "warn",
  meaning: "A port of side A, by its row, its model or its network, is in no data network of side B and cabled to no switch of side B, nor the other way round.",
  check: (model) => [
    ...gather(model.wiring.all(), ({ table, row, label, side, network, to, duty }): Remark[] => {
      if (to === null || side === "" || to.side === "" || to.side === side) return [];
      // What the network of a port says against its model is told at the network.
      if (duty !== null && isOfOther(network, duty.side)) return [];
      const where = row.network === "" ? `side ${side}` : `${row.network} (side ${side})`;
      return [remarkAt(model, table, row, "switch", cutSentence(`${label} is in ${where}, ${to.switch} is of side ${to.side}. Cable it to one of side ${side}.`))];
    }),
    ...gather(model.ports.all(), ({ row, network, duty }): Remark[] => {
      if (duty === null || network === null || !isOfOther(network, duty.side)) return [];
      const sentence = `${row.array} port ${portLabel(row)} is of side ${duty.side} by its model, ${row.network} of side ${network.row.side}. Name a network of side ${duty.side}.`;
      return [remarkAt(model, "ports", row, "network", cutSentence(sentence))];
    }),
    ...gather(model.hostPorts.all(), ({ row, network }): Remark[] => {
      if (network === null || !isOfOther(network, row.side)) return [];
      const { side } = network.row;
      return [remarkAt(model, "hostPorts", row, "side", `Side ${row.side} is not that of ${row.network}, ${side}. Write ${side}, or another network.`, mendAt(model, "hostPorts", row, "side", side))];
    }),
  ],
};

/** Tells whether a data network is of the other side than a port. */
function isOfOther(network: Network | null, side: "A" | "B" | ""): boolean {
  return network !== null && network.roles.has("data") && network.row.side !== "" && side !== "" && network.row.side !== side;
}
