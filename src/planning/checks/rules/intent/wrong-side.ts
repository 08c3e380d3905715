import { portLabel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

export const wrongSide: Rule = {
  name: "wrong-side",
  family: "intent",
  weight: "warn",
  meaning: "A port of side A, by its row, its model or its network, is in no data network of side B and cabled to no switch of side B, nor the other way round.",
  check: (model) => [
    ...model.wiring.all().flatMap(({ table, row, label, side, to }): Remark[] => {
      if (to === null || side === "" || to.side === "" || to.side === side) return [];
      const where = row.network === "" ? `side ${side}` : `${row.network} (side ${side})`;
      return [remarkAt(model, table, row, "switch", cutSentence(`${label} is in ${where}, ${to.switch} is of side ${to.side}. Cable it to one of side ${side}.`))];
    }),
    ...model.ports.all().flatMap(({ row, network, duty }): Remark[] => {
      const side = network?.roles.has("data") ? network.row.side : "";
      if (duty === null || duty.side === "" || side === "" || duty.side === side) return [];
      const sentence = `${row.array} port ${portLabel(row)} is of side ${duty.side} by its model, ${row.network} of side ${side}. Name a network of side ${duty.side}.`;
      return [remarkAt(model, "ports", row, "network", cutSentence(sentence))];
    }),
    ...model.hostPorts.all().flatMap(({ row, network }): Remark[] => {
      const side = network?.roles.has("data") ? network.row.side : "";
      if (row.side === "" || side === "" || row.side === side) return [];
      return [remarkAt(model, "hostPorts", row, "side", `Side ${row.side} is not that of ${row.network}, ${side}. Write ${side}, or another network.`, mendAt(model, "hostPorts", row, "side", side))];
    }),
  ],
};
