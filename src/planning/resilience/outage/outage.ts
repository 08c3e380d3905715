import type { Scheme } from "../../capacity";
import { noAnswer } from "../../text";
import { domainValues, faultGroups, type DomainValue, type DomainValues, type FaultGroups, type Placement } from "./placement";

/** What one loss, or two at once, do to the members of a scheme. */
export interface Loss {
  readonly lost: number;
  /** Further losses of members always survived; 0 where the loss is not survived. */
  readonly left: number;
  readonly survives: boolean;
}

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

/**
 * Finds the worst single loss of each domain column, and the worst two losses over all columns.
 *
 * Worst is: first what does not survive, then the least left, then the most lost; of equals the first in order of appearance, and of
 * pairs the one whose values take more members with them. A group survives as many losses as the scheme always survives there; a member
 * that fills no group counts as lost but takes no data with it.
 *
 * Takes time of members times columns, and for the pairs a search that is cut by what a pair can do at most; past a fixed amount of
 * work it refuses.
 */
export function outage(scheme: Scheme, placement: Placement): Outage {
  const count = placement.domains[0]?.cells.length ?? 0;
  const groups = faultGroups(scheme, count, placement.groups);
  const cells = domainValues(placement.domains);
  const tally = new LossTally(groups);
  const losses = cells.values.map(({ members }) => tally.lossOf([members]));

  const domains = placement.domains.map(({ name }, domain): DomainOutage => {
    let worst = -1;
    cells.values.forEach((value, index) => {
      if (value.domain === domain && (worst === -1 || isWorse(losses[index]!, losses[worst]!))) worst = index;
    });
    return { domain: name, value: cells.values[worst]!.name, ...losses[worst]! };
  });

  const pair = worstPair(cells, losses, tally);
  const named = (index: number): { domain: string; value: string } => {
    const { domain, name } = cells.values[index]!;
    return { domain: placement.domains[domain]!.name, value: name };
  };
  return { domains, pair: pair && { values: [named(pair.first), named(pair.second)], ...pair.loss } };
}

function isWorse(one: Loss, other: Loss): boolean {
  if (one.survives !== other.survives) return !one.survives;
  if (one.left !== other.left) return one.left < other.left;
  return one.lost > other.lost;
}

/** Adds up what sets of members do to their groups. */
class LossTally {
  /** Losses survived by every group while nothing is lost. */
  readonly leastTolerance: number;
  private readonly stamp: Int32Array;
  private readonly lostIn: Int32Array;
  private round = 0;
  work = 0;

  constructor(private readonly groups: FaultGroups) {
    this.leastTolerance = groups.tolerance.reduce((least, tolerance) => Math.min(least, tolerance), Infinity);
    this.stamp = new Int32Array(groups.groupOf.length);
    this.lostIn = new Int32Array(groups.tolerance.length);
  }

  /** Counts the losses when all members of `sets` go, a member of several sets once. */
  lossOf(sets: readonly (readonly number[])[]): Loss {
    const { groupOf, tolerance } = this.groups;
    this.round += 1;
    let lost = 0;
    let slack = this.leastTolerance;
    for (const set of sets) {
      this.work += set.length;
      for (const member of set) {
        if (this.stamp[member] === this.round) continue;
        this.stamp[member] = this.round;
        lost += 1;
        const group = groupOf[member]!;
        if (group < 0) continue;
        const lostHere = (this.lostIn[group]! += 1);
        slack = Math.min(slack, tolerance[group]! - lostHere);
      }
    }
    for (const set of sets) {
      for (const member of set) {
        const group = groupOf[member]!;
        if (group >= 0) this.lostIn[group] = 0;
      }
    }
    return { lost, left: Math.max(0, slack), survives: slack >= 0 };
  }

  /** Counts the most that `members` take from one group. */
  mostInOneGroup(members: readonly number[]): number {
    const { groupOf } = this.groups;
    let most = 0;
    for (const member of members) {
      const group = groupOf[member]!;
      if (group >= 0) most = Math.max(most, (this.lostIn[group]! += 1));
    }
    for (const member of members) {
      const group = groupOf[member]!;
      if (group >= 0) this.lostIn[group] = 0;
    }
    return most;
  }
}

interface WorstPair {
  readonly first: number;
  readonly second: number;
  readonly loss: Loss;
}

/** Most work on pairs before a placement is refused: about a second. */
const mostWork = 50_000_000;

/**
 * Finds the worst pair without trying them all.
 *
 * Losing more members never makes an outcome better. So a value whose members all go with another value is left out, and, with the
 * values sorted by how many members they take, a pair is passed over once neither of the two bounds on it (members lost, losses left)
 * can beat the worst pair so far.
 */
function worstPair(cells: DomainValues, losses: readonly Loss[], tally: LossTally): WorstPair | null {
  const { values, pairs } = cells;
  if (values.length < 2) return null;
  let worst: WorstPair | null = null;
  const consider = (a: number, b: number, both: readonly number[]): void => {
    const loss = tally.lossOf([values[a]!.members, values[b]!.members, both]);
    if (worst === null || isWorse(loss, worst.loss)) worst = { first: Math.min(a, b), second: Math.max(a, b), loss };
  };
  for (const { first, second, members } of pairs) consider(first, second, members);

  const size = (value: number): number => values[value]!.members.length;
  const kept = undominatedValues(cells).sort((a, b) => size(b) - size(a) || a - b);
  // A lone value that takes all that any other takes: its pair with any other is as bad as it alone.
  if (kept.length === 1) kept.push(kept[0] === 0 ? 1 : 0);

  const mostAfter = kept.map((value) => tally.mostInOneGroup(values[value]!.members));
  for (let index = kept.length - 2; index >= 0; index -= 1) mostAfter[index] = Math.max(mostAfter[index]!, mostAfter[index + 1]!);

  for (let i = 0; i + 1 < kept.length; i += 1) {
    const a = kept[i]!;
    for (let j = i + 1; j < kept.length; j += 1) {
      const b = kept[j]!;
      if (worst !== null && !canBeWorse(losses[a]!, mostAfter[j]!, size(a) + size(b), worst)) break;
      consider(a, b, []);
      tally.work += 8;
      if (tally.work > mostWork) {
        throw noAnswer("placement", null, "placement has too many domains that cut across each other for its worst pair. Give fewer columns or rows.");
      }
    }
  }
  return worst;
}

/** Tells whether a value with `loss` and any that takes at most `most` from one group and `lost` members with it can beat `worst`. */
function canBeWorse(loss: Loss, most: number, lost: number, worst: WorstPair): boolean {
  const slack = loss.survives ? loss.left - most : -1;
  return isWorse({ lost, left: Math.max(0, slack), survives: slack >= 0 }, worst.loss);
}

/** Lists the values that take members with them which no single other value takes all of; of equals the first is kept. */
function undominatedValues({ values, soleValue }: DomainValues): number[] {
  return values.flatMap((value, index) => (isDominated(value, index, values, soleValue) ? [] : [index]));
}

function isDominated(value: DomainValue, index: number, values: readonly DomainValue[], soleValue: readonly Int32Array[]): boolean {
  const [member] = value.members;
  if (member === undefined) return index > 0 || values.some((other) => other.members.length > 0);
  return soleValue.some((column, domain) => {
    const other = column[member]!;
    if (domain === value.domain || other < 0) return false;
    const { length } = values[other]!.members;
    if (length < value.members.length || (length === value.members.length && other > index)) return false;
    return value.members.every((one) => column[one] === other);
  });
}
