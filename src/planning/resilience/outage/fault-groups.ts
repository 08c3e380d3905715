import { layoutDrives, type Scheme } from "../../capacity";
import { foldName, invalid, quote } from "../../text";

/** Which group each member is in, and how many of its members each group may lose. */
export interface FaultGroups {
  /** Group of each member, counted from 0; -1 for a member that fills no group. */
  readonly groupOf: Int32Array;
  /** Losses that each group always survives. */
  readonly tolerance: Int32Array;
}

/**
 * Tells the groups of `count` members apart.
 *
 * Without `groups` the members lie as `layoutDrives` lays them. With them, each name is a group of its own: a scheme of fixed groups
 * takes exactly its shape (a pair for striped mirrors), the others take what they would take as a whole. `argument` is what the
 * sentences call the members.
 */
export function faultGroups(scheme: Scheme, count: number, groups: readonly string[] | undefined, argument: string): FaultGroups {
  return groups === undefined ? groupsByLayout(scheme, count, argument) : groupsByName(groups, (size, name) => groupTolerance(scheme, size, name, argument));
}

function groupsByLayout(scheme: Scheme, count: number, argument: string): FaultGroups {
  refuseSize(scheme, count, argument, `${argument} has ${count} rows`, "Give a row for every member, and no others.");
  const { groups, members, redundancy } = layoutDrives(scheme, count);
  const width = members / groups;
  const groupOf = Int32Array.from({ length: count }, (_, member) => (member < members ? Math.floor(member / width) : -1));
  return { groupOf, tolerance: new Int32Array(groups).fill(redundancy) };
}

/** Makes a group of each name, without case; `toleranceOf` says how many of its members it may lose. */
export function groupsByName(names: readonly string[], toleranceOf: (size: number, name: string) => number): FaultGroups {
  const numbers = new Map<string, number>();
  const sizes: number[] = [];
  const shown: string[] = [];
  const groupOf = Int32Array.from(names, (name) => {
    const key = foldName(name);
    let group = numbers.get(key);
    if (group === undefined) {
      group = sizes.length;
      numbers.set(key, group);
      sizes.push(0);
      shown.push(name);
    }
    sizes[group]! += 1;
    return group;
  });
  const tolerance = Int32Array.from(sizes, (size, group) => toleranceOf(size, shown[group]!));
  return { groupOf, tolerance };
}

function groupTolerance(scheme: Scheme, size: number, name: string, argument: string): number {
  if (scheme.grouping === "fixed-groups") {
    const width = scheme.data! + scheme.redundancy!;
    if (size !== width) {
      throw invalid(argument, name, `${argument}: group ${quote(name)} has ${size} members; ${scheme.name} takes ${width} a group. Mend the Group column.`);
    }
    return scheme.redundancy!;
  }
  refuseSize(scheme, size, argument, `${argument}: group ${quote(name)} has ${size} members`, "Mend the Group column.");
  return layoutDrives(scheme, size).redundancy;
}

function refuseSize({ name, leastDrives, mostDrives }: Scheme, size: number, argument: string, what: string, mend: string): void {
  if (size >= leastDrives && size <= mostDrives) return;
  const bound = size < leastDrives ? `at least ${leastDrives}` : `at most ${mostDrives}`;
  throw invalid(argument, size, `${what}; ${name} takes ${bound}. ${mend}`);
}
