import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostOnOneSwitch: Rule = {
  name: "host-on-one-switch",
  family: "resilience",
  weight: "warn",
  meaning: "A host has more than one path to the arrays: links to at least two switches.",
  check: (model) =>
    gather(model.rows("hosts"), (row): Remark[] => {
      const only = model.paths.onlySwitchOfHost(row);
      if (only === null) return [];
      const sentence = `${row.host} has one path to the arrays, over ${only}: when that fails it loses its disks. Link it to another switch.`;
      return [remarkAt(model, "hosts", row, "host", sentence)];
    }),
};
