import type { Layout } from "../capacity";
import { megabytesPerSecond, type MegabytesPerSecond, type Share } from "../quantity";
import { noAnswer } from "../text";

/** All drives at work; one drive out; one drive out and its data being rebuilt. */
export const arrayStates = ["healthy", "degraded", "rebuilding"] as const;
export type ArrayState = (typeof arrayStates)[number];

/** What the array is asked for, and what holds it back. */
export interface StreamLoad {
  readonly readShare: Share;
  readonly state: ArrayState;
  /** Rate that controllers or links carry at most; null for none. */
  readonly ceiling: MegabytesPerSecond | null;
  /** Share of the drives' time that a rebuild takes. */
  readonly rebuildShare: Share;
}

/**
 * Computes the MB/s of many long streams together, of which the share `readShare` reads and the rest writes full stripes.
 *
 * With drives of rate r, groups of k + m read (k + m)·r and write k·r; with one drive out they read (k + m - 1)·r. A scheme spread over n drives
 * reads n·r and writes n·r·k/(k + m), with n - 1 for n when a drive is out and there are more than k + m. Groups are striped, so all of them go at
 * the pace of the slowest. Reads and writes share the drives' time: 1 / (reads / read rate + writes / write rate). Large reads and writes of
 * Chen, Lee, Gibson, Katz, Patterson, ACM Computing Surveys 26(2), 1994, table 1. One stream alone reads k/(k + m) of it.
 *
 * No answer for a scheme without redundancy that has lost a drive.
 */
export function streamRate(layout: Layout, driveRate: MegabytesPerSecond, { readShare, state, ceiling, rebuildShare }: StreamLoad): MegabytesPerSecond {
  if (state !== "healthy" && layout.redundancy === 0) {
    const { name } = layout.scheme;
    throw noAnswer("state", state, `state "${state}" has a drive out, and scheme ${name} does not survive that. Give a scheme with redundancy, or "healthy".`);
  }
  const drives = workingDrives(layout, state !== "healthy");
  const mixed = driveRate / (readShare / drives.reading + (1 - readShare) / drives.writing);
  const left = state === "rebuilding" ? mixed * (1 - rebuildShare) : mixed;
  return megabytesPerSecond(ceiling === null ? left : Math.min(left, ceiling));
}

/** Counts how many drives' worth of data are read, and written, at once. */
function workingDrives({ scheme, members, groups, data, redundancy }: Layout, oneOut: boolean): { readonly reading: number; readonly writing: number } {
  const width = data + redundancy;
  if (scheme.grouping === "spread" && members > width) {
    const working = oneOut ? members - 1 : members;
    return { reading: working, writing: (working * data) / width };
  }
  return { reading: groups * (oneOut ? width - 1 : width), writing: groups * data };
}
