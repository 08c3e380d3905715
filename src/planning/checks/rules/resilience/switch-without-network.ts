import { quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { splitNames } from "../../../plan/model";
import { foldName } from "../../../text";

export const switchWithoutNetwork: Rule = {
  name: "switch-without-network",
  family: "resilience",
  weight: "stop",
  meaning: "A port is cabled to a switch that carries its network.",
  check: (index) => {
    const carried = new Map(index.rows("switches").map((row) => [row, new Set(splitNames(row.networks).map(foldName))]));
    return index.ports.flatMap(({ row, to }): Remark[] => {
      if (to === null || row.network === "" || carried.get(to)!.has(foldName(row.network))) return [];
      return [remarkAt(index, "ports", row, "switch", `${to.switch} does not carry network ${quote(row.network)} of this port. Add it to the switch, or cable the port to another.`)];
    });
  },
};
