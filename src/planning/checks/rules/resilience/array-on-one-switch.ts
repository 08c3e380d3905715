import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const arrayOnOneSwitch: Rule = {
  name: "array-on-one-switch",
  family: "resilience",
  weight: "stop",
  meaning: "The ports of an array are cabled to more than one switch.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const only = model.paths.onlySwitchOf(row);
      return only === null ? [] : [remarkAt(model, "arrays", row, "array", `All cabled ports of ${row.array} go to ${only}: when it fails the array is not reached. Cable some to another switch.`)];
    }),
};
