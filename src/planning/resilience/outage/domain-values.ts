import { foldName, invalid, quote } from "../../text";

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
  /** Per column, a number for what each member stands in, whether one value or several. */
  readonly cellOf: readonly Int32Array[];
}

/**
 * Reads the cells of every domain column: which value takes which members with it.
 *
 * Case does not matter. A member of several values goes only when all of them go; one named twice counts once.
 */
export function domainValues(domains: readonly Domain[]): DomainValues {
  const values: { domain: number; name: string; members: number[] }[] = [];
  const pairs = new Map<string, { first: number; second: number; members: number[] }>();
  const cellOf: Int32Array[] = [];
  const soleValue = domains.map(({ cells }, domain) => {
    const numbers = new Map<string, number>();
    const valueOf = (name: string): number => {
      const key = foldName(name);
      let value = numbers.get(key);
      if (value === undefined) {
        value = values.length;
        numbers.set(key, value);
        values.push({ domain, name, members: [] });
      }
      return value;
    };
    const cellNumbers = new Map<string, number>();
    const numberOfCell = new Int32Array(cells.length);
    cellOf.push(numberOfCell);
    return Int32Array.from(cells, (cell, member) => {
      const parts = cell.length === 1 ? [valueOf(cell[0]!)] : [...new Set(cell.map(valueOf))].sort((one, other) => one - other);
      const key = parts.join("+");
      const number = cellNumbers.get(key) ?? cellNumbers.size;
      cellNumbers.set(key, number);
      numberOfCell[member] = number;
      const [first, second, ...others] = parts as [number, number?, ...number[]];
      if (second === undefined) {
        values[first]!.members.push(member);
        return first;
      }
      if (others.length === 0) {
        const pair = pairs.get(key) ?? { first, second, members: [] };
        pair.members.push(member);
        pairs.set(key, pair);
      }
      return -1;
    });
  });
  return { values, pairs: [...pairs.values()], soleValue, cellOf };
}

/** Reads a cell of a placement: a value, or `A+B` for a member that goes only when both go. `at` says where it stands. */
export function parseDomainCell(text: string, at: string): string[] {
  const parts = text.split("+").map((part) => part.trim());
  if (parts.includes("")) throw invalid("placement", text, `${at} ${quote(text)} lacks a name beside its +. Write two names, such as A+B.`);
  return parts;
}
