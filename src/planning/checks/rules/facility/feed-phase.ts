import { quote } from "../../../text";
import type { PlanRow } from "../../../plan/read";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";
import { splitFeed, type PlanIndex } from "../../../plan/model";

export const feedPhase: Rule = {
  name: "feed-phase",
  family: "facility",
  weight: "warn",
  meaning: "Only a feed of three phases has a phase to hang on.",
  mends: "Writes the feed without the phase.",
  check: (index) => [
    ...index.rows("arrays").flatMap((row) => remarksOf(index, "arrays", row)),
    ...index.rows("switches").flatMap((row) => remarksOf(index, "switches", row)),
  ],
};

function remarksOf(index: PlanIndex, key: "arrays" | "switches", row: PlanRow<"arrays"> | PlanRow<"switches">): Remark[] {
  return (["feedA", "feedB"] as const).flatMap((column): Remark[] => {
    const { feed, phase } = splitFeed(row[column]);
    const found = phase === null ? null : index.find("feeds", feed);
    if (found === null || found.phases === 3) return [];
    return [remarkAt(index, key, row, column, `${quote(row[column])} names a phase, but ${found.feed} has one only. Write ${found.feed}.`, mendAt(index, key, row, column, found.feed))];
  });
}
