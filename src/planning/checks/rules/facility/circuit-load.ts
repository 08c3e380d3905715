import { formatAmps } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const circuitLoad: Rule = {
  name: "circuit-load",
  family: "facility",
  weight: "stop",
  meaning: "While every feed is up, each carries no more than its continuous share of its breaker (a planning figure: the local code decides).",
  check: (model) =>
    model.power.loads()
      .filter(({ normal }) => !normal.ok)
      .map(({ row, normal }) =>
        remarkAt(model, "feeds", row, "breakerA", `${row.feed} carries ${formatAmps(normal.worstAmps)} all the time, its limit is ${formatAmps(normal.limitAmps)}. Move some of it to another feed.`),
      ),
};
