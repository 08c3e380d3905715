import { remarkAt, type Remark, type Rule } from "../../finding";
import { switchesOfHost } from "../../../plan/model";
import { foldName } from "../../../text";

export const hostOnOneSwitch: Rule = {
  name: "host-on-one-switch",
  family: "resilience",
  weight: "warn",
  meaning: "A host has more than one path to the arrays: links to at least two switches.",
  check: (index) =>
    index.rows("hosts").flatMap((row): Remark[] => {
      const switches = new Map(switchesOfHost(index, row).map((name) => [foldName(name), name]));
      if (switches.size !== 1) return [];
      const [only] = switches.values();
      return [remarkAt(index, "hosts", row, "host", `${row.host} has one path to the arrays, over ${only}: when that fails it loses its disks. Link it to another switch.`)];
    }),
};
