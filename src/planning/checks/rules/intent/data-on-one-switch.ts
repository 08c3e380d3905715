import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const dataOnOneSwitch: Rule = {
  name: "data-on-one-switch",
  family: "intent",
  weight: "warn",
  meaning: "The data ports of an array go to at least two switches, wherever its other ports go.",
  check: (model) =>
    gather(model.rows("arrays"), (array): Remark[] => {
      if (model.paths.onlySwitchOf(array) !== null) return []; // told by a rule of its own
      const cabled = model.hostPaths.dataPortsOf(array).filter(({ row }) => row.switch !== "");
      const only = model.paths.onlySwitchAmong(cabled);
      if (only === null || cabled.length < 2) return [];
      const sentence = `All data ports of ${array.array} go to ${only}: when it fails no host reaches the data. Cable some to another switch.`;
      return [remarkAt(model, "arrays", array, "array", sentence)];
    }),
};
