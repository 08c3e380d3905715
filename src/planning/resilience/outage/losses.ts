import type { DomainValues } from "./domain-values";
import type { FaultGroups } from "./fault-groups";
import type { PieceSpread } from "./piece-spread";

/** What one loss, or two at once, do to the members of a scheme. */
export interface Loss {
  readonly lost: number;
  /** Further losses of members always survived; 0 where the loss is not survived. */
  readonly left: number;
  readonly survives: boolean;
}

/** Tells whether one loss is worse: what does not survive, then the least left, then the most lost. */
export function isWorse(one: Loss, other: Loss): boolean {
  if (one.survives !== other.survives) return !one.survives;
  if (one.left !== other.left) return one.left < other.left;
  return one.lost > other.lost;
}

/** Makes the loss of `lost` members after which the group that is worst off may lose `slack` more; below 0 it has lost data. */
export function lossWith(lost: number, slack: number): Loss {
  return { lost, left: Math.max(0, slack), survives: slack >= 0 };
}

/** Adds up what the loss of domain values does to the groups: any members of a group count, or the pieces of a stripe as they are spread. */
export class LossTally {
  /** Members looked at so far. */
  work = 0;
  /** Losses survived by every group while nothing is lost. */
  private readonly leastTolerance: number;
  private readonly stamp: Int32Array;
  private readonly lostIn: Int32Array;
  private round = 0;

  constructor(
    private readonly groups: FaultGroups,
    private readonly values: DomainValues["values"],
    private readonly pieces: PieceSpread | null,
  ) {
    this.leastTolerance = groups.tolerance.reduce((least, tolerance) => Math.min(least, tolerance), Infinity);
    this.stamp = new Int32Array(groups.groupOf.length);
    this.lostIn = new Int32Array(groups.tolerance.length);
  }

  /** Tells what the loss of a value does, or of two, and with them of the members that stand in both. */
  lossOf(first: number, second: number | null = null, both: readonly number[] = []): Loss {
    const sets = [this.values[first]!.members, second === null ? [] : this.values[second]!.members, both];
    let slack = this.leastTolerance;
    const lost = this.tally(sets, (group, members) => {
      const taken = this.pieces === null ? members : Math.min(members, this.pieces.lost(group, first, second, both.length === 0 ? 0 : this.countIn(group, both)));
      slack = Math.min(slack, this.groups.tolerance[group]! - taken);
    });
    return lossWith(lost, slack);
  }

  /** Counts the most that a value takes from one group. */
  mostTaken(value: number): number {
    if (this.pieces !== null) return this.pieces.most(value);
    let most = 0;
    this.tally([this.values[value]!.members], (_, members) => (most = Math.max(most, members)));
    return most;
  }

  private countIn(group: number, members: readonly number[]): number {
    return members.filter((member) => this.groups.groupOf[member] === group).length;
  }

  /** Counts the members of `sets`, one of several sets once, and tells how many of them each group had. */
  private tally(sets: readonly (readonly number[])[], visit: (group: number, members: number) => void): number {
    const { groupOf } = this.groups;
    const touched: number[] = [];
    let lost = 0;
    this.round += 1;
    for (const set of sets) {
      this.work += set.length;
      for (const member of set) {
        if (this.stamp[member] === this.round) continue;
        this.stamp[member] = this.round;
        lost += 1;
        const group = groupOf[member]!;
        if (group >= 0 && (this.lostIn[group]! += 1) === 1) touched.push(group);
      }
    }
    for (const group of touched) {
      visit(group, this.lostIn[group]!);
      this.lostIn[group] = 0;
    }
    return lost;
  }
}
