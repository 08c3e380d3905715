import { gather, groupBy } from "../../../plan/model";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const controllerOnOneSwitch: Rule = {
  name: "controller-on-one-switch",
  family: "resilience",
  weight: "warn",
  meaning: "The ports of each controller are cabled to more than one switch, where it has more than one port.",
  check: (model) =>
    gather(model.rows("arrays"), (array): Remark[] => {
      if (model.paths.onlySwitchOf(array) !== null) return [];
      const cabled = model.ports.of(array).filter(({ row }) => row.switch !== "");
      return [...groupBy(cabled, ({ row }) => foldName(row.controller)).values()].flatMap((ports): Remark[] => {
        const first = ports[0]!.row;
        const isOne = ports.every(({ row }) => foldName(row.switch) === foldName(first.switch));
        if (!isOne || new Set(ports.map(({ row }) => foldName(row.port))).size < 2) return [];
        const sentence = `All cabled ports of controller ${first.controller} of ${array.array} go to ${first.switch}. Cable one of them to another switch.`;
        return [remarkAt(model, "ports", first, "switch", sentence)];
      });
    }),
};
