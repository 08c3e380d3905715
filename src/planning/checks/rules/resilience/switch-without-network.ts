import { foldName, quote, splitNames } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const switchWithoutNetwork: Rule = {
  name: "switch-without-network",
  family: "resilience",
  weight: "stop",
  meaning: "A port is cabled to a switch that carries its network.",
  check: (model) => {
    const carried = new Map(model.rows("switches").map((row) => [row, new Set(splitNames(row.networks).map(foldName))]));
    return model.ports.all().flatMap(({ row, to }): Remark[] => {
      if (to === null || row.network === "" || carried.get(to)!.has(foldName(row.network))) return [];
      const sentence = `${to.switch} does not carry network ${quote(row.network)} of this port. Add it to the switch, or cable the port to another.`;
      return [remarkAt(model, "ports", row, "switch", sentence)];
    });
  },
};
