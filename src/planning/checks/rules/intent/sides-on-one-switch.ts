import { gather, type SwitchCable } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const sidesOnOneSwitch: Rule = {
  name: "sides-on-one-switch",
  family: "intent",
  weight: "warn",
  meaning: "Data networks of side A and side B meet on no switch: one failure would take both.",
  check: (model) => {
    const first = new Map<object, SwitchCable>();
    const told = new Set<object>();
    return gather(model.wiring.all(), (port): Remark[] => {
      const { table, row, network, to } = port;
      if (to === null || !network?.roles.has("data") || network.row.side === "") return [];
      const earlier = first.get(to);
      if (earlier === undefined) first.set(to, port);
      // On a switch that says its side a rule of its own tells which port is wrong.
      if (earlier === undefined || to.side !== "" || earlier.network?.row.side === network.row.side || told.has(to)) return [];
      told.add(to);
      const sentence = `${row.network} (side ${network.row.side}) and ${earlier.row.network} are both cabled to ${to.switch}: its loss takes both sides. Use two switches.`;
      return [remarkAt(model, table, row, "switch", sentence)];
    });
  },
};
