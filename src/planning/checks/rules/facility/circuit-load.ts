import { remarkAt, type Rule } from "../../finding";
import { plannedFeedLoads } from "../../../plan/model";

export const circuitLoad: Rule = {
  name: "circuit-load",
  family: "facility",
  weight: "stop",
  meaning: "While every feed is up, each carries no more than its continuous share of its breaker (a planning figure: the local code decides).",
  check: (index) =>
    plannedFeedLoads(index)
      .filter(({ normal }) => !normal.ok)
      .map(({ row, normal }) =>
        remarkAt(index, "feeds", row, "breakerA", `${row.feed} carries ${amps(normal.worstAmps)} A all the time, its limit is ${amps(normal.limitAmps)} A. Move some of it to another feed.`),
      ),
};

/** Writes a current to a tenth of an ampere. */
export function amps(current: number): string {
  return (Math.round(current * 10) / 10).toString();
}
