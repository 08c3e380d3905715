import { gather } from "../../../plan/model";
import { foldName, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const switchWithoutNetwork: Rule = {
  name: "switch-without-network",
  family: "resilience",
  weight: "stop",
  meaning: "A port of an array or a host is cabled to a switch that carries its network.",
  check: (model) =>
    gather(model.wiring.all(), ({ table, row, to }): Remark[] => {
      if (to === null || row.network === "" || model.networks.carriedBy(to).has(foldName(row.network))) return [];
      const sentence = `${to.switch} does not carry network ${quote(row.network)} of this port. Add it to the switch, or cable the port to another.`;
      return [remarkAt(model, table, row, "switch", sentence)];
    }),
};
