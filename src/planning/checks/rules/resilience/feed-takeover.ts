import { amps } from "../facility/circuit-load";
import { remarkAt, type Rule } from "../../finding";
import { plannedFeedLoads } from "../../../plan/model";

export const feedTakeover: Rule = {
  name: "feed-takeover",
  family: "resilience",
  weight: "stop",
  meaning: "When any one feed is lost, those that take over its load stay within their continuous share.",
  check: (index) =>
    plannedFeedLoads(index)
      .filter(({ normal, worst }) => normal.ok && !worst.ok)
      .map(({ row, worst }) =>
        remarkAt(index, "feeds", row, "breakerA", `${row.feed} would carry ${amps(worst.worstAmps)} A once the other feed is lost, its limit is ${amps(worst.limitAmps)} A. Spread the load.`),
      ),
};
