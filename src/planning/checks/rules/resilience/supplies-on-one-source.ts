import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { splitFeed, type PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

export const suppliesOnOneSource: Rule = {
  name: "supplies-on-one-source",
  family: "resilience",
  weight: "warn",
  meaning: "The feeds of a device hang on different sources: boards, UPSs or utilities.",
  check: (index) => [
    ...index.rows("arrays").flatMap((row) => sameSource(index, "arrays", row, row.array)),
    ...index.rows("switches").flatMap((row) => sameSource(index, "switches", row, row.switch)),
  ],
};

function sameSource(index: PlanIndex, key: "arrays" | "switches", row: PlanRow<"arrays"> | PlanRow<"switches">, name: string): Remark[] {
  const [a, b] = [row.feedA, row.feedB].map((text) => (text === "" ? null : index.find("feeds", splitFeed(text).feed)));
  if (a === null || a === undefined || b === null || b === undefined || a === b || a.source === "" || foldName(a.source) !== foldName(b.source)) return [];
  return [remarkAt(index, key, row, "feedB", `${a.feed} and ${b.feed}, which ${name} hangs on, are both on ${a.source}: one failure there takes both. Use another source.`)];
}
