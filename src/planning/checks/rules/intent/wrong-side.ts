import { cutSentence } from "../../../text";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

export const wrongSide: Rule = {
  name: "wrong-side",
  family: "intent",
  weight: "warn",
  meaning: "A port of side A is in no data network of side B and cabled to no switch of side B, nor the other way round.",
  check: (model) => [
    ...model.wiring.all().flatMap(({ table, row, label, side, to }): Remark[] => {
      if (to === null || side === "" || to.side === "" || to.side === side) return [];
      const where = row.network === "" ? `side ${side}` : `${row.network} (side ${side})`;
      return [remarkAt(model, table, row, "switch", cutSentence(`${label} is in ${where}, ${to.switch} is of side ${to.side}. Cable it to one of side ${side}.`))];
    }),
    ...model.hostPorts.all().flatMap(({ row, network }): Remark[] => {
      const side = network?.roles.has("data") ? network.row.side : "";
      if (row.side === "" || side === "" || row.side === side) return [];
      return [remarkAt(model, "hostPorts", row, "side", `Side ${row.side} is not that of ${row.network}, ${side}. Write ${side}, or another network.`, mendAt(model, "hostPorts", row, "side", side))];
    }),
  ],
};
