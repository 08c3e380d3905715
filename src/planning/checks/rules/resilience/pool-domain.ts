import { orNull, type PlanModel, type PoolContents } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { splitFeedPhase, outage, type Outage } from "../../../resilience";
import { foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const poolDomain: Rule = {
  name: "pool-domain",
  family: "resilience",
  weight: "stop",
  meaning: "A pool with a scheme across its arrays survives the loss of any one rack, feed or switch.",
  check: (model) =>
    model.capacity.pools().flatMap((contents): Remark[] => {
      const { pool, across, arrays } = contents;
      const worst = across === null ? null : orNull(() => worstLosses(model, contents));
      if (across === null || worst === null) return [];
      return worst.domains
        .filter(({ survives, value }) => !survives && !value.startsWith("\u0000"))
        .map(({ domain, value, lost }) => {
          const loss = `the loss of ${domain} ${value}, which takes ${lost} of its ${arrays.length} arrays`;
          return remarkAt(model, "pools", pool, "acrossArrays", `${across.name} over ${pool.pool} does not survive ${loss}. Spread them.`);
        });
    }),
};

function worstLosses(model: PlanModel, { across, arrays }: PoolContents): Outage {
  const domains = [
    { name: "rack", cells: arrays.map((row) => cellOf([row.rack], row)) },
    { name: "feed", cells: arrays.map((row) => cellOf([splitFeedPhase(row.feedA).feed, splitFeedPhase(row.feedB).feed], row)) },
    { name: "switch", cells: arrays.map((row) => cellOf(model.ports.of(row).map((port) => port.row.switch), row)) },
  ];
  return outage(across!, { domains });
}

/** Lists where an array stands, any one of which is enough to keep it; one of which nothing is known stands in a place of its own. */
function cellOf(names: readonly string[], row: PlanRow<"arrays">): string[] {
  const known = [...new Map(names.filter((name) => name !== "").map((name) => [foldName(name), name])).values()];
  return known.length === 0 ? [`\u0000${row.row}`] : known;
}
