import type { PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import type { PlanRow } from "../../../plan/read";
import { quote } from "../../../text";
import { mendAt, type Remark, remarkAt, type Rule } from "../../finding";

export const feedPhase: Rule = {
  name: "feed-phase",
  family: "facility",
  weight: "warn",
  meaning: "Only a feed of three phases has a phase to hang on.",
  mends: "Writes the feed without the phase.",
  check: (model) => [
    ...model.rows("arrays").flatMap((row) => remarksOf(model, "arrays", row)),
    ...model.rows("shelves").flatMap((row) => remarksOf(model, "shelves", row)),
    ...model.rows("switches").flatMap((row) => remarksOf(model, "switches", row)),
  ],
};

function remarksOf(model: PlanModel, key: "arrays" | "shelves" | "switches", row: PlanRow<"arrays"> | PlanRow<"shelves"> | PlanRow<"switches">): Remark[] {
  return (["feedA", "feedB"] as const).flatMap((column): Remark[] => {
    const found = splitFeedPhase(row[column]).phase === null ? null : model.power.feedNamed(row[column]);
    if (found === null || found.phases === 3) return [];
    const sentence = `${quote(row[column])} names a phase, but ${found.feed} has one only. Write ${found.feed}.`;
    return [remarkAt(model, key, row, column, sentence, mendAt(model, key, row, column, found.feed))];
  });
}
