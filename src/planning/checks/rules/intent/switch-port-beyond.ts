import { gather, oncePer, portsOfSwitch } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const switchPortBeyond: Rule = {
  name: "switch-port-beyond",
  family: "intent",
  weight: "stop",
  meaning: "A cable goes to a port that its switch has, where the switch says which it has.",
  check: (model) => {
    const namesOf = oncePer((row: PlanRow<"switches">) => {
      const names = portsOfSwitch(row);
      return names === null ? null : new Set(names.map(foldName));
    });
    return [
      ...gather(model.rows("switches"), (row): Remark[] => {
        if (row.ports === "" || portsOfSwitch(row) !== null) return [];
        return [remarkAt(model, "switches", row, "ports", `Ports ${quote(row.ports)} of ${row.switch} cannot be read. Write how many, such as 24, or names such as 1-24, x1, x2.`)];
      }),
      ...gather(model.wiring.all(), ({ table, row, to }): Remark[] => {
        const ports = to === null || row.switchPort === "" ? null : namesOf(to);
        if (ports === null || ports.has(foldName(row.switchPort))) return [];
        return [remarkAt(model, table, row, "switchPort", cutSentence(`${to!.switch} has no port ${quote(row.switchPort)}: its ports are ${to!.ports}. Write one of them.`))];
      }),
    ];
  },
};
