import { formatAmps } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const feedTakeover: Rule = {
  name: "feed-takeover",
  family: "resilience",
  weight: "stop",
  meaning: "When any one feed is lost, those that take over its load stay within their continuous share.",
  check: (model) =>
    model.power.loads()
      .filter(({ normal, worst }) => normal.ok && !worst.ok)
      .map(({ row, worst }) =>
        remarkAt(model, "feeds", row, "breakerA", `${row.feed} would carry ${formatAmps(worst.worstAmps)} once the other feed is lost, its limit is ${formatAmps(worst.limitAmps)}. Spread the load.`),
      ),
};
