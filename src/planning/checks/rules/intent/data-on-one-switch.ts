import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const dataOnOneSwitch: Rule = {
  name: "data-on-one-switch",
  family: "intent",
  weight: "warn",
  meaning: "The data ports of an array go to at least two switches, wherever its other ports go.",
  check: (model) =>
    model.rows("arrays").flatMap((array): Remark[] => {
      if (model.paths.onlySwitchOf(array) !== null) return []; // told by a rule of its own
      const to = model.hostPaths.dataPortsOf(array).map(({ row }) => row.switch).filter((name) => name !== "");
      if (to.length < 2 || new Set(to.map(foldName)).size > 1) return [];
      const sentence = `All data ports of ${array.array} go to ${to[0]!}: when it fails no host reaches the data. Cable some to another switch.`;
      return [remarkAt(model, "arrays", array, "array", sentence)];
    }),
};
