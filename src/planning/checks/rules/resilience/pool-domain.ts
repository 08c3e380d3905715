import { gather, orNull, type PlanModel, type PoolContents } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { outageOfAny, splitFeedPhase, type DomainOutage } from "../../../resilience";
import { foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const poolDomain: Rule = {
  name: "pool-domain",
  family: "resilience",
  weight: "stop",
  meaning: "A pool with a scheme across its arrays survives the loss of any one rack, feed or switch; an array goes with the first of its shelves.",
  check: (model) =>
    gather(model.capacity.pools(), (contents): Remark[] => {
      const { pool, across, arrays } = contents;
      const worst = across === null ? null : orNull(() => worstLosses(model, contents));
      if (across === null || worst === null) return [];
      return worst
        .filter(({ survives }) => !survives)
        .map(({ domain, value, lost }) => {
          const loss = `the loss of ${domain} ${value}, which takes ${lost} of its ${arrays.length} arrays`;
          return remarkAt(model, "pools", pool, "acrossArrays", `${across.name} over ${pool.pool} does not survive ${loss}. Spread them.`);
        });
    }),
};

function worstLosses(model: PlanModel, { across, arrays }: PoolContents): DomainOutage[] {
  const parts = (row: PlanRow<"arrays">) => [row, ...model.rowsWith("shelves", "array", row.array)];
  return outageOfAny(across!, [
    { name: "rack", cells: arrays.map((row) => parts(row).flatMap(({ rack }) => soleOf([rack]))) },
    { name: "feed", cells: arrays.map((row) => parts(row).flatMap(({ feedA, feedB }) => soleOf([splitFeedPhase(feedA).feed, splitFeedPhase(feedB).feed]))) },
    { name: "switch", cells: arrays.map((row) => soleOf(model.ports.of(row).map((port) => port.row.switch))) },
  ]);
}

/** Gives the one name on which something hangs alone; none where nothing is known of it, or where it hangs on two. */
function soleOf(names: readonly string[]): string[] {
  const known = [...new Map(names.filter((name) => name !== "").map((name) => [foldName(name), name])).values()];
  return known.length === 1 ? known : [];
}
