import { gather, keptPortsOf, oncePer, portsOfSwitch } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { foldName, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const switchPortKept: Rule = {
  name: "switch-port-kept",
  family: "intent",
  weight: "stop",
  meaning: "No port of an array or a host is cabled to a switch port that is kept for something else, such as an uplink, and every kept port is one that the switch has.",
  check: (model) => {
    const kept = oncePer((row: PlanRow<"switches">) => keptPortsOf(row));
    return [
      ...gather(model.rows("switches"), (row): Remark[] => {
        const names = kept(row);
        if (names === null) return [remarkAt(model, "switches", row, "keptPorts", `Kept ports ${quote(row.keptPorts)} cannot be read. Write 23, 24 or 23-24.`)];
        const ports = portsOfSwitch(row)?.map(foldName);
        const missing = [...names].find((name) => ports?.includes(name) === false);
        if (missing === undefined) return [];
        const sentence = `${row.switch} keeps port ${missing}, which it does not have: what is meant stays free. Write one of its ports.`;
        return [remarkAt(model, "switches", row, "keptPorts", sentence)];
      }),
      ...gather(model.wiring.all(), ({ table, row, to }): Remark[] => {
        if (to === null || row.switchPort === "" || !kept(to)?.has(foldName(row.switchPort))) return [];
        return [remarkAt(model, table, row, "switchPort", `Port ${row.switchPort} of ${to.switch} is kept by its column Kept ports. Choose another, or free it there.`)];
      }),
    ];
  },
};
