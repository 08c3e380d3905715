import { invalid, roundTo } from "../text";
import { mostDrives, type Scheme } from "./scheme";

/** A scheme laid on a number of drives. Drives count from 1: the groups come first, then the spares, then what fills no group. */
export interface Layout {
  readonly scheme: Scheme;
  readonly drives: number;
  readonly spares: number;
  /** Drives that the scheme uses. */
  readonly members: number;
  /** Drives that fill no group. */
  readonly outside: number;
  /** 1 for one group and for spread schemes. */
  readonly groups: number;
  /** Drives of data in each group, or in each stripe of a spread scheme. */
  readonly data: number;
  /** Drives of redundancy in each group or stripe: as many failures are always survived. */
  readonly redundancy: number;
}

/**
 * Lays `scheme` on `drives` drives, after `spares` of them are set aside.
 *
 * `drives` and `spares` are whole. Refuses spares that leave no drive, and fewer or more drives than the scheme takes; `argument` is what
 * the sentence calls their number.
 */
export function layoutDrives(scheme: Scheme, drives: number, spares = 0, argument = "drives"): Layout {
  const available = drives - spares;
  if (available < 1) {
    throw invalid("spares", spares, `spares is ${spares} of ${drives} drives, which leaves none for data. Write fewer spares than drives.`);
  }
  if (available < scheme.leastDrives) throw tooFew(scheme, drives, spares, argument);
  if (available > scheme.mostDrives) throw tooMany(scheme, drives, spares, argument);
  const redundancy = scheme.redundancy ?? available - 1;
  const data = scheme.data ?? available - redundancy;
  const groups = scheme.grouping === "fixed-groups" ? Math.floor(available / (data + redundancy)) : 1;
  const members = scheme.grouping === "fixed-groups" ? groups * (data + redundancy) : available;
  return { scheme, drives, spares, members, outside: available - members, groups, data, redundancy };
}

/** One row of a layout: a group, the spares, or the drives outside a group. Drives count from 1. */
export interface LayoutRow {
  readonly kind: "group" | "spread" | "spares" | "outside";
  /** Number of the group, from 1; null for the others. */
  readonly group: number | null;
  readonly firstDrive: number;
  readonly lastDrive: number;
  /** Drives of data and of redundancy; for a spread scheme those of one stripe; null where there are none. */
  readonly data: number | null;
  readonly redundancy: number | null;
}

/** Lists which drives belong to which group: the groups in order, then the spares, then the drives that fill no group. */
export function layoutRows(layout: Layout): LayoutRow[] {
  const { groups, data, redundancy, members, spares, outside, drives } = layout;
  const width = members / groups;
  const rows = Array.from({ length: groups }, (_, index): LayoutRow => ({
    kind: layout.scheme.grouping === "spread" ? "spread" : "group",
    group: layout.scheme.grouping === "spread" ? null : index + 1,
    firstDrive: index * width + 1,
    lastDrive: (index + 1) * width,
    data,
    redundancy,
  }));
  const none = { group: null, data: null, redundancy: null };
  if (spares > 0) rows.push({ kind: "spares", ...none, firstDrive: members + 1, lastDrive: members + spares });
  if (outside > 0) rows.push({ kind: "outside", ...none, firstDrive: drives - outside + 1, lastDrive: drives });
  return rows;
}

/** Which drives fail: any, or those that hurt least. */
export type FailureCase = "always" | "best";

/**
 * Counts the drive failures survived at once: "always", whichever drives fail; "best", when they fall where most can be lost (each
 * group loses all its redundancy; a spread scheme has no better case).
 */
export function survivedFailures(layout: Layout, failures: FailureCase): number {
  return failures === "always" ? layout.redundancy : layout.redundancy * layout.groups;
}

function tooFew(scheme: Scheme, drives: number, spares: number, argument: string): Error {
  const least = scheme.leastDrives;
  return invalid(argument, drives, `${argument} ${less(drives, spares)} is too few: ${scheme.name} needs at least ${least}. Write ${least + spares} or more.`);
}

function tooMany(scheme: Scheme, drives: number, spares: number, argument: string): Error {
  if (scheme.mostDrives < mostDrives) {
    const available = drives - spares;
    const instead = `RAID 10 (pairs, space of ${Math.floor(available / 2)} drives) or 3 copies (space of ${roundTo(2, available / 3)})`;
    return invalid(argument, drives, `${argument} ${less(drives, spares)} is too many: ${scheme.name} takes at most ${scheme.mostDrives}. Write ${instead}.`);
  }
  return invalid(argument, drives, `${argument} is ${drives}. Write at most ${mostDrives}.`);
}

function less(drives: number, spares: number): string {
  return spares === 0 ? String(drives) : `${drives} less ${spares} spares`;
}
