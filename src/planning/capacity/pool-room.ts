import { foldName, invalid, noAnswer, quote } from "../text";
import { bytes, exactFraction, partOf, type Bytes, type Share } from "../quantity";

/** One array of a pool. */
export interface PoolMember {
  readonly name: string;
  readonly usable: Bytes;
  readonly used: Bytes;
}

/** Whether one member can leave its pool, and what follows. */
export interface PoolRoom {
  readonly removable: boolean;
  /** What the member holds and the others must take. */
  readonly moving: Bytes;
  /** What the others can take before they reach the fill limit; one that is past it has none. */
  readonly room: Bytes;
  /** Everything used as a share of what the others hold. */
  readonly fillAfterwards: number;
}

/**
 * Works out whether `name` can be taken out of its pool: whether the others have room, up to `fill` of each, for what it holds.
 *
 * Names are compared without case. Refuses a name that is not there or there twice; no answer where it is the only member.
 */
export function roomWithout(members: readonly PoolMember[], name: string, fill: Share): PoolRoom {
  const isIt = (member: PoolMember): boolean => foldName(member.name) === foldName(name);
  const leaving = members.filter(isIt);
  const others = members.filter((member) => !isIt(member));
  if (leaving.length === 0) throw invalid("remove", name, `remove ${quote(name)} is not among the members. Write a name from their first column.`);
  if (leaving.length > 1) throw invalid("members", name, `members has ${quote(name)} ${leaving.length} times. Give every array a name of its own.`);
  if (others.length === 0) throw noAnswer("remove", name, `remove ${quote(name)} is the only member, so nothing can take over. Add the other arrays of the pool.`);
  const limit = exactFraction(fill);
  const room = sum(others.map(({ usable, used }) => atLeastZero((usable * limit.numerator) / limit.denominator - used)));
  const moving = leaving[0]!.used;
  return {
    removable: moving <= room,
    moving,
    room,
    fillAfterwards: partOf(sum(members.map(({ used }) => used)), sum(others.map(({ usable }) => usable))),
  };
}

function sum(sizes: readonly bigint[]): Bytes {
  return bytes(sizes.reduce((total, size) => total + size, 0n));
}

function atLeastZero(size: bigint): bigint {
  return size > 0n ? size : 0n;
}
