import { onlySwitchOf } from "./array-on-one-switch";
import { remarkAt, type Remark, type Rule } from "../../finding";
import type { PortFacts } from "../../../plan/model";
import { foldName } from "../../../text";

export const controllerOnOneSwitch: Rule = {
  name: "controller-on-one-switch",
  family: "resilience",
  weight: "warn",
  meaning: "The ports of each controller are cabled to more than one switch, where it has more than one port.",
  check: (index) =>
    index.rows("arrays").flatMap((array): Remark[] => {
      if (onlySwitchOf(index, array) !== null) return [];
      const byController = new Map<string, PortFacts[]>();
      for (const port of index.portsOf(array)) {
        if (port.row.switch === "") continue;
        const key = foldName(port.row.controller);
        const list = byController.get(key);
        if (list === undefined) byController.set(key, [port]);
        else list.push(port);
      }
      return [...byController.values()].flatMap((ports): Remark[] => {
        const first = ports[0]!.row;
        const isOne = ports.every(({ row }) => foldName(row.switch) === foldName(first.switch));
        if (!isOne || new Set(ports.map(({ row }) => foldName(row.port))).size < 2) return [];
        return [remarkAt(index, "ports", first, "switch", `All cabled ports of controller ${first.controller} of ${array.array} go to ${first.switch}. Cable one of them to another switch.`)];
      });
    }),
};
