import type { Scheme } from "../../capacity";
import { invalid } from "../../text";
import { domainValues, type Placement } from "./domain-values";
import { faultGroups } from "./fault-groups";
import { isWorse, LossTally, type Loss } from "./losses";
import { PieceSpread } from "./piece-spread";
import { worstPair } from "./worst-pair";

/** The worst single value of one column. */
export interface DomainOutage extends Loss {
  readonly domain: string;
  readonly value: string;
}

/** The worst two values, of one column or of two. */
export interface PairOutage extends Loss {
  readonly values: readonly [{ domain: string; value: string }, { domain: string; value: string }];
}

/** The worst that the loss of a domain does, column by column, and the worst that two do. */
export interface Outage {
  readonly domains: readonly DomainOutage[];
  /** Null where there is but one value in all. */
  readonly pair: PairOutage | null;
}

/** Which members hold the pieces of a stripe of a spread code: any of them, or as few as can be in each domain. */
export const pieceSpreads = ["any", "by domain"] as const;
export type Pieces = (typeof pieceSpreads)[number];

/**
 * Finds the worst single loss of each domain column, and the worst two losses over all columns.
 *
 * Worst is: first what does not survive, then the least left, then the most lost; of equals the first in order of appearance, and of
 * pairs the one whose values take more members with them. A group survives as many losses as the scheme always survives there; a member
 * that fills no group counts as lost but takes no data with it. With pieces "by domain" a spread code survives as many lost pieces of a stripe:
 * every column is then taken as the one by which it spreads, and two values of different columns take at most what each takes alone.
 *
 * Takes time of members times columns, and for the pairs a search that is cut by what a pair can do at most; past a fixed amount of
 * work it refuses. Refuses "by domain" for schemes that are not spread.
 */
export function outage(scheme: Scheme, placement: Placement, pieces: Pieces = "any"): Outage {
  const isByDomain = pieces === "by domain";
  if (isByDomain && scheme.grouping !== "spread") {
    throw invalid("pieces", pieces, `pieces "by domain" is for codes spread over all drives, such as 8+3; ${scheme.name} is none. Leave it out.`);
  }
  const count = placement.domains[0]?.cells.length ?? 0;
  const groups = faultGroups(scheme, count, placement.groups, "placement");
  const cells = domainValues(placement.domains);
  const tally = new LossTally(groups, cells.values, isByDomain ? new PieceSpread(groups, cells, scheme.data! + scheme.redundancy!) : null);
  const losses = cells.values.map((_, value) => tally.lossOf(value));

  const domains = placement.domains.map(({ name }, domain): DomainOutage => {
    let worst = -1;
    cells.values.forEach((value, index) => {
      if (value.domain === domain && (worst === -1 || isWorse(losses[index]!, losses[worst]!))) worst = index;
    });
    return { domain: name, value: cells.values[worst]!.name, ...losses[worst]! };
  });

  const pair = worstPair(cells, losses, tally, isByDomain);
  const named = (index: number): { domain: string; value: string } => {
    const { domain, name } = cells.values[index]!;
    return { domain: placement.domains[domain]!.name, value: name };
  };
  return { domains, pair: pair && { values: [named(pair.first), named(pair.second)], ...pair.loss } };
}
