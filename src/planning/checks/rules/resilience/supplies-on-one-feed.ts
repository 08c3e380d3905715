import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { splitFeed, type PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

export const suppliesOnOneFeed: Rule = {
  name: "supplies-on-one-feed",
  family: "resilience",
  weight: "warn",
  meaning: "The two supplies of an array, and of a switch that has two, hang on different feeds.",
  check: (index) => [
    ...index.rows("arrays").flatMap((row): Remark[] => [...sameFeed(index, "arrays", row, row.array), ...oneFeed(index, row)]),
    ...index.rows("switches").flatMap((row) => sameFeed(index, "switches", row, row.switch)),
  ],
};

function sameFeed(index: PlanIndex, key: "arrays" | "switches", row: PlanRow<"arrays"> | PlanRow<"switches">, name: string): Remark[] {
  const [a, b] = [splitFeed(row.feedA).feed, splitFeed(row.feedB).feed];
  if (a === "" || foldName(a) !== foldName(b)) return [];
  return [remarkAt(index, key, row, "feedB", `Both supplies of ${name} hang on ${a}: when it fails the device goes dark. Put one on another feed.`)];
}

function oneFeed(index: PlanIndex, row: PlanRow<"arrays">): Remark[] {
  if ((row.feedA === "") === (row.feedB === "")) return [];
  const column = row.feedA === "" ? "feedA" : "feedB";
  return [remarkAt(index, "arrays", row, column, `${row.array} has a feed for one supply only. Name the feed of the other, on another source.`)];
}
