import { portLabel } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const wrongSide: Rule = {
  name: "wrong-side",
  family: "intent",
  weight: "warn",
  meaning: "A port in a data network of side A is cabled to no switch of side B, nor the other way round.",
  check: (model) =>
    model.ports.all().flatMap(({ row, network, to }): Remark[] => {
      const side = network?.roles.has("data") ? network.row.side : "";
      if (to === null || side === "" || to.side === "" || to.side === side) return [];
      const sentence = `Port ${portLabel(row)} of ${row.array} is in ${row.network} (side ${side}), ${to.switch} is of side ${to.side}. Cable it to one of side ${side}.`;
      return [remarkAt(model, "ports", row, "switch", sentence)];
    }),
};
