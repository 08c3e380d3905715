import type { Device, PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import { foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const suppliesOnOneFeed: Rule = {
  name: "supplies-on-one-feed",
  family: "resilience",
  weight: "warn",
  meaning: "The two supplies of an array, and of a shelf or switch that has two, hang on different feeds.",
  check: (model) => model.power.devices().flatMap((device): Remark[] => [...sameFeed(model, device), ...oneFeed(model, device)]),
};

function sameFeed(model: PlanModel, { table, row, name }: Device): Remark[] {
  const [a, b] = [splitFeedPhase(row.feedA).feed, splitFeedPhase(row.feedB).feed];
  if (a === "" || foldName(a) !== foldName(b)) return [];
  return [remarkAt(model, table, row, "feedB", `Both supplies of ${name} hang on ${a}: when it fails the device goes dark. Put one on another feed.`)];
}

/** Arrays have two supplies; shelves and switches may have one. */
function oneFeed(model: PlanModel, { table, row, name }: Device): Remark[] {
  if (table !== "arrays" || (row.feedA === "") === (row.feedB === "")) return [];
  const column = row.feedA === "" ? "feedA" : "feedB";
  return [remarkAt(model, table, row, column, `${name} has a feed for one supply only. Name the feed of the other, on another source.`)];
}
