import type { DomainValues } from "./domain-values";
import type { FaultGroups } from "./fault-groups";

/** How a stripe lies over the cells of one column: `low` pieces in each that has room for them, and one more in `extra` of the others. */
interface Levels {
  readonly low: number;
  readonly extra: number;
}

/**
 * Tells how many pieces of one stripe a loss takes, where a code spread over all drives puts as few of them as it can into each domain.
 *
 * The fewest that let a stripe of `width` pieces fit at all: no domain has more than c of them, and none has c that could do with c − 1. Every column
 * is taken by itself, as the one that the code spreads by; members on the same two feeds, say, are a domain of their own.
 */
export class PieceSpread {
  private readonly levels: readonly (readonly Levels[])[];
  private readonly countsOf: readonly ReadonlyMap<number, number>[];
  private readonly columnOf: readonly number[];

  constructor({ groupOf, tolerance }: FaultGroups, { values, cellOf }: DomainValues, width: number) {
    this.columnOf = values.map(({ domain }) => domain);
    this.countsOf = values.map(({ members }) => countBy(members, (member) => groupOf[member]!));
    this.levels = cellOf.map((cells) => {
      const counts = Array.from(tolerance, () => new Map<number, number>());
      cells.forEach((cell, member) => {
        const inGroup = counts[groupOf[member]!]!;
        inGroup.set(cell, (inGroup.get(cell) ?? 0) + 1);
      });
      return counts.map((inGroup) => levelsFor(width, [...inGroup.values()]));
    });
  }

  /** Counts the pieces of one stripe of a group that go at most with a value, or with two and the `both` members of the group that stand in both. */
  lost(group: number, first: number, second: number | null = null, both = 0): number {
    const one = this.countsOf[first]!.get(group) ?? 0;
    const column = this.columnOf[first]!;
    if (second === null) return piecesIn(this.levels[column]![group]!, [one]);
    const other = this.countsOf[second]!.get(group) ?? 0;
    if (this.columnOf[second] === column) return piecesIn(this.levels[column]![group]!, [one, other, both]);
    // Of two columns either may be the one that the code spreads by: at most what each takes alone.
    return this.lost(group, first) + this.lost(group, second);
  }

  /** Counts the most pieces of one stripe that a value takes. */
  most(value: number): number {
    return Math.max(0, ...[...this.countsOf[value]!.keys()].map((group) => this.lost(group, value)));
  }
}

function countBy(members: readonly number[], keyOf: (member: number) => number): Map<number, number> {
  const counts = new Map<number, number>();
  for (const member of members) counts.set(keyOf(member), (counts.get(keyOf(member)) ?? 0) + 1);
  return counts;
}

function levelsFor(width: number, counts: readonly number[]): Levels {
  const room = (level: number): number => counts.reduce((sum, count) => sum + Math.min(count, level), 0);
  let low = 0;
  while (room(low + 1) < width) low += 1;
  return { low, extra: width - room(low) };
}

function piecesIn({ low, extra }: Levels, counts: readonly number[]): number {
  const full = counts.filter((count) => count > low).length;
  return counts.reduce((sum, count) => sum + Math.min(count, low), 0) + Math.min(extra, full);
}
