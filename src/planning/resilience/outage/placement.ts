import { layoutDrives, type Scheme } from "../../capacity";
import { invalid, quote } from "../../text";

/** One column of a placement: what each member stands in, such as its rack. */
export interface Domain {
  readonly name: string;
  /** For each member the values of which one is enough to keep it: one as a rule, two for a member on feeds A and B. Never none. */
  readonly cells: readonly (readonly string[])[];
}

/** Where the members of a redundancy scheme stand. */
export interface Placement {
  readonly domains: readonly Domain[];
  /** Group of each member, where the layout order does not say it. */
  readonly groups?: readonly string[];
}

/** Which group each member is in, and how many of its members each group may lose. */
export interface FaultGroups {
  /** Group of each member, counted from 0; -1 for a member that fills no group. */
  readonly groupOf: Int32Array;
  /** Losses that each group always survives. */
  readonly tolerance: Int32Array;
}

/** Value of a domain column, and the members it takes with it. */
export interface DomainValue {
  readonly domain: number;
  readonly name: string;
  /** Members that go when this value alone goes, in ascending order. */
  readonly members: readonly number[];
}

/** Two values of one column, and the members that stand in both and so go only with both. */
export interface ValuePair {
  readonly first: number;
  readonly second: number;
  readonly members: readonly number[];
}

/** What the cells of a placement say, value by value. */
export interface DomainValues {
  /** Every value of every column: column by column, in order of appearance. */
  readonly values: readonly DomainValue[];
  readonly pairs: readonly ValuePair[];
  /** Per column, the value that alone takes each member with it; -1 where no single one does. */
  readonly soleValue: readonly Int32Array[];
}

/**
 * Tells the groups of `count` members apart.
 *
 * Without `groups` the members lie as `layoutDrives` lays them. With them, each name is a group of its own: a scheme of fixed groups
 * takes exactly its shape (a pair for striped mirrors), the others take what they would take as a whole.
 */
export function faultGroups(scheme: Scheme, count: number, groups: readonly string[] | undefined): FaultGroups {
  return groups === undefined ? groupsByLayout(scheme, count) : groupsByName(scheme, groups);
}

function groupsByLayout(scheme: Scheme, count: number): FaultGroups {
  refuseSize(scheme, count, "placement has", "Give a row for every member, and no others.");
  const { groups, members, redundancy } = layoutDrives(scheme, count);
  const width = members / groups;
  const groupOf = Int32Array.from({ length: count }, (_, member) => (member < members ? Math.floor(member / width) : -1));
  return { groupOf, tolerance: new Int32Array(groups).fill(redundancy) };
}

function groupsByName(scheme: Scheme, names: readonly string[]): FaultGroups {
  const numbers = new Map<string, number>();
  const sizes: number[] = [];
  const shown: string[] = [];
  const groupOf = Int32Array.from(names, (name) => {
    const key = name.toLowerCase();
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
  const tolerance = Int32Array.from(sizes, (size, group) => groupTolerance(scheme, size, shown[group]!));
  return { groupOf, tolerance };
}

function groupTolerance(scheme: Scheme, size: number, name: string): number {
  if (scheme.placement === "fixed-groups") {
    const width = scheme.data! + scheme.redundancy!;
    if (size !== width) {
      throw invalid("placement", name, `placement: group ${quote(name)} has ${size} members; ${scheme.name} takes ${width} a group. Mend the Group column.`);
    }
    return scheme.redundancy!;
  }
  refuseSize(scheme, size, `placement: group ${quote(name)} has`, "Mend the Group column.");
  return layoutDrives(scheme, size).redundancy;
}

function refuseSize({ name, leastDrives, mostDrives }: Scheme, size: number, what: string, mend: string): void {
  if (size >= leastDrives && size <= mostDrives) return;
  const bound = size < leastDrives ? `at least ${leastDrives}` : `at most ${mostDrives}`;
  throw invalid("placement", size, `${what} ${size} members; ${name} takes ${bound}. ${mend}`);
}

/**
 * Reads the cells of every domain column: which value takes which members with it.
 *
 * Case does not matter. A member of several values goes only when all of them go; one named twice counts once.
 */
export function domainValues(domains: readonly Domain[]): DomainValues {
  const values: { domain: number; name: string; members: number[] }[] = [];
  const pairs = new Map<string, { first: number; second: number; members: number[] }>();
  const soleValue = domains.map(({ cells }, domain) => {
    const numbers = new Map<string, number>();
    const valueOf = (name: string): number => {
      const key = name.toLowerCase();
      let value = numbers.get(key);
      if (value === undefined) {
        value = values.length;
        numbers.set(key, value);
        values.push({ domain, name, members: [] });
      }
      return value;
    };
    return Int32Array.from(cells, (cell, member) => {
      const parts = cell.length === 1 ? [valueOf(cell[0]!)] : [...new Set(cell.map(valueOf))];
      if (parts.length === 1) {
        values[parts[0]!]!.members.push(member);
        return parts[0]!;
      }
      if (parts.length === 2) {
        const [first, second] = parts[0]! < parts[1]! ? [parts[0]!, parts[1]!] : [parts[1]!, parts[0]!];
        const key = `${first}+${second}`;
        const pair = pairs.get(key) ?? { first, second, members: [] };
        pair.members.push(member);
        pairs.set(key, pair);
      }
      return -1;
    });
  });
  return { values, pairs: [...pairs.values()], soleValue };
}

/** Reads a cell of a placement: a value, or `A+B` for a member that goes only when both go. `at` says where it stands. */
export function parseDomainCell(text: string, at: string): string[] {
  const parts = text.split("+").map((part) => part.trim());
  if (parts.includes("")) throw invalid("placement", text, `${at} ${quote(text)} lacks a name beside its +. Write two names, such as A+B.`);
  return parts;
}
