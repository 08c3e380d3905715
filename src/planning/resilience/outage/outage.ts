import type { Scheme } from "../../capacity";
import { foldName, invalid } from "../../text";
import { domainValues, type Domain, type DomainValue, type Placement } from "./domain-values";
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

  const domains = worstOfEach(placement.domains, cells.values, losses);

  const pair = worstPair(cells, losses, tally, isByDomain);
  const named = (index: number): { domain: string; value: string } => {
    const { domain, name } = cells.values[index]!;
    return { domain: placement.domains[domain]!.name, value: name };
  };
  return { domains, pair: pair && { values: [named(pair.first), named(pair.second)], ...pair.loss } };
}

/**
 * Finds the worst single loss of each domain where every value that a cell names takes the member with it: an array
 * goes with the rack of its chassis and with that of its shelf. A cell may be empty; a domain that names no value is left out.
 */
export function outageOfAny(scheme: Scheme, domains: readonly Domain[]): DomainOutage[] {
  const values = domains.flatMap(({ cells }, domain): DomainValue[] => {
    const found = new Map<string, { domain: number; name: string; members: number[] }>();
    cells.forEach((cell, member) => {
      for (const [key, name] of new Map(cell.map((one) => [foldName(one), one]))) {
        const value = found.get(key) ?? { domain, name, members: [] };
        value.members.push(member);
        found.set(key, value);
      }
    });
    return [...found.values()];
  });
  const tally = new LossTally(faultGroups(scheme, domains[0]?.cells.length ?? 0, undefined, "placement"), values, null);
  return worstOfEach(domains, values, values.map((_, value) => tally.lossOf(value)));
}

/** Picks the worst value of each domain that has one; of equals the first in order of appearance. */
function worstOfEach(domains: readonly Domain[], values: readonly DomainValue[], losses: readonly Loss[]): DomainOutage[] {
  const worst = new Map<number, number>();
  values.forEach(({ domain }, index) => {
    const before = worst.get(domain);
    if (before === undefined || isWorse(losses[index]!, losses[before]!)) worst.set(domain, index);
  });
  return [...worst].map(([domain, index]) => ({ domain: domains[domain]!.name, value: values[index]!.name, ...losses[index]! }));
}
