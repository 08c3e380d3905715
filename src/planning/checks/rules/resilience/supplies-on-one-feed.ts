import { shelfLabel, type PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import type { PlanRow } from "../../../plan/read";
import { foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const suppliesOnOneFeed: Rule = {
  name: "supplies-on-one-feed",
  family: "resilience",
  weight: "warn",
  meaning: "The two supplies of an array, and of a shelf or switch that has two, hang on different feeds.",
  check: (model) => [
    ...model.rows("arrays").flatMap((row): Remark[] => [...sameFeed(model, "arrays", row, row.array), ...oneFeed(model, row)]),
    ...model.rows("shelves").flatMap((row) => sameFeed(model, "shelves", row, shelfLabel(row))),
    ...model.rows("switches").flatMap((row) => sameFeed(model, "switches", row, row.switch)),
  ],
};

function sameFeed(model: PlanModel, key: "arrays" | "shelves" | "switches", row: PlanRow<"arrays"> | PlanRow<"shelves"> | PlanRow<"switches">, name: string): Remark[] {
  const [a, b] = [splitFeedPhase(row.feedA).feed, splitFeedPhase(row.feedB).feed];
  if (a === "" || foldName(a) !== foldName(b)) return [];
  return [remarkAt(model, key, row, "feedB", `Both supplies of ${name} hang on ${a}: when it fails the device goes dark. Put one on another feed.`)];
}

function oneFeed(model: PlanModel, row: PlanRow<"arrays">): Remark[] {
  if ((row.feedA === "") === (row.feedB === "")) return [];
  const column = row.feedA === "" ? "feedA" : "feedB";
  return [remarkAt(model, "arrays", row, column, `${row.array} has a feed for one supply only. Name the feed of the other, on another source.`)];
}
