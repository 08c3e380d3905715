import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Remark, type Rule } from "../../finding";
import type { PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

export const arrayOnOneSwitch: Rule = {
  name: "array-on-one-switch",
  family: "resilience",
  weight: "stop",
  meaning: "The ports of an array are cabled to more than one switch.",
  check: (index) =>
    index.rows("arrays").flatMap((row): Remark[] => {
      const only = onlySwitchOf(index, row);
      return only === null ? [] : [remarkAt(index, "arrays", row, "array", `All cabled ports of ${row.array} go to ${only}: when it fails the array is not reached. Cable some to another switch.`)];
    }),
};

/** Names the one switch to which all cabled ports of an array go; null where there are several, or none. */
export function onlySwitchOf(index: PlanIndex, array: PlanRow<"arrays">): string | null {
  const cabled = index.portsOf(array).filter(({ row }) => row.switch !== "");
  const first = cabled[0]?.row.switch;
  return first !== undefined && cabled.every(({ row }) => foldName(row.switch) === foldName(first)) ? first : null;
}
