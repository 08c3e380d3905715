import { shelfLabel, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const suppliesOnOneSource: Rule = {
  name: "supplies-on-one-source",
  family: "resilience",
  weight: "warn",
  meaning: "The feeds of a device hang on different sources: boards, UPSs or utilities.",
  check: (model) => [
    ...model.rows("arrays").flatMap((row) => sameSource(model, "arrays", row, row.array)),
    ...model.rows("shelves").flatMap((row) => sameSource(model, "shelves", row, shelfLabel(row))),
    ...model.rows("switches").flatMap((row) => sameSource(model, "switches", row, row.switch)),
  ],
};

function sameSource(model: PlanModel, key: "arrays" | "shelves" | "switches", row: PlanRow<"arrays"> | PlanRow<"shelves"> | PlanRow<"switches">, name: string): Remark[] {
  const [a, b] = model.power.feedsOf(row);
  if (a === undefined || b === undefined || a === b || a.source === "" || foldName(a.source) !== foldName(b.source)) return [];
  const sentence = `${a.feed} and ${b.feed}, which ${name} hangs on, are both on ${a.source}: one failure there takes both. Use another source.`;
  return [remarkAt(model, key, row, "feedB", sentence)];
}
