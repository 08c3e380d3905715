import { gather, oncePer, portLabel, type PortFacts } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portRole: Rule = {
  name: "port-role",
  family: "intent",
  weight: "stop",
  meaning: "Where Model ports does not say what a port is for, the same port of all controllers and arrays of a model at a site is in networks of one role.",
  check: (model) => {
    const firstOfKind = oncePer<string, Map<string, PortFacts>>(() => new Map());
    const firstAlike = oncePer(({ site, model: name, row }: PlanRow<"arrays">) => firstOfKind(`${foldName(site)}\n${name === "" ? `\n${row}` : foldName(name)}`));
    return gather(model.ports.all(), (port): Remark[] => {
      const { row, array, network } = port;
      if (array === null || network === null || network.roles.size === 0) return [];
      if (port.duty !== null && port.duty.role !== "") return []; // told by a rule of its own
      const [first, name] = [firstAlike(array), foldName(row.port)];
      const earlier = first.get(name);
      if (earlier === undefined) first.set(name, port);
      if (earlier === undefined || [...network.roles].some((role) => earlier.network?.roles.has(role))) return [];
      const roles = [...network.roles].join(", ");
      const other = `${earlier.row.array} port ${portLabel(earlier.row)}`;
      const sentence = `Port ${portLabel(row)} of ${row.array} is in ${network.row.network} (${roles}); ${other} is for ${[...(earlier.network?.roles ?? [])].join(", ")}. Mend one.`;
      return [remarkAt(model, "ports", row, "network", sentence)];
    });
  },
};
