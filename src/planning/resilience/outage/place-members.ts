import type { Scheme } from "../../capacity";
import { foldName, invalid, noAnswer, quote } from "../../text";
import { evenFlow, type GroupKind } from "./even-flow";
import { faultGroups, groupsByName, type FaultGroups } from "./fault-groups";

/** A domain that members can be placed in. */
export interface Room {
  readonly name: string;
  /** Members it can take; null: any number. */
  readonly room: number | null;
  /** Where it stands, for a sentence about it, such as `domains row 2`. */
  readonly at?: string;
}

/** What a placement is to survive. */
export interface PlacementAims {
  /** Scheme of which the members are; without one, and with groups, each group loses as few members to one domain as can be. */
  readonly scheme?: Scheme;
  /** Group of each member, where the layout order of the scheme does not say it. */
  readonly groups?: readonly string[];
}

/**
 * Places members over domains, and answers the domain of each member.
 *
 * With a scheme or groups the loss of any one domain is survived whenever a placement within the rooms can do that: see `evenFlow` for the order
 * of aims. Without either the members go round the domains in their order, passing over those that are full. Either way the fullest domain
 * holds as few as possible, and the same question has the same answer. Losing two domains at once is not looked at.
 *
 * Refuses a domain that stands twice, more members than there is room for, and a number of members that the scheme does not take.
 */
export function placeMembers(members: readonly string[], domains: readonly Room[], { scheme, groups }: PlacementAims = {}): string[] {
  const known = new Set<string>();
  for (const { name, at = "domains" } of domains) {
    if (known.has(foldName(name))) throw invalid("domains", name, `${at}: ${quote(name)} stands twice. Give each domain one row.`);
    known.add(foldName(name));
  }
  const rooms = domains.map(({ room }) => Math.min(room ?? members.length, members.length));
  const space = domains.reduce((sum, { room }) => sum + (room ?? members.length), 0);
  if (space < members.length) {
    throw noAnswer("domains", space, `domains have room for ${space} of ${members.length} members. Add a domain or more room.`);
  }
  const placed =
    scheme !== undefined
      ? placeGroups(faultGroups(scheme, members.length, groups, "members"), rooms)
      : groups !== undefined
        ? placeGroups(groupsByName(groups, () => 0), rooms)
        : goRound(members.length, rooms);
  return Array.from(placed, (domain) => domains[domain]!.name);
}

function goRound(members: number, rooms: readonly number[]): number[] {
  const placed: number[] = [];
  for (let round = 1, open = [...rooms.keys()]; placed.length < members; round += 1) {
    open = open.filter((domain) => rooms[domain]! >= round);
    for (const domain of open.slice(0, members - placed.length)) placed.push(domain);
  }
  return placed;
}

function placeGroups(groups: FaultGroups, rooms: readonly number[]): Int32Array {
  const kinds = alikeGroups(groups);
  const loads = evenFlow(kinds, rooms);
  const placed = new Int32Array(groups.groupOf.length);
  kinds.forEach(({ members }, kind) => {
    // Dealt out like cards, domain after domain: groups that are alike then have as many members in a domain as each other, or one more.
    const hands = members.map((): number[] => []);
    let dealt = 0;
    loads[kind]!.forEach((load, domain) => {
      for (const last = dealt + load; dealt < last; dealt += 1) hands[dealt % hands.length]!.push(domain);
    });
    hands.forEach((hand, group) => takeTurns(hand).forEach((domain, index) => (placed[members[group]![index]!] = domain)));
  });
  return placed;
}

/** Orders the domains of one group, of which equal ones stand together, so that members that follow each other stand apart: each once, then each again. */
function takeTurns(hand: readonly number[]): number[] {
  const turns: number[][] = [];
  let turn = 0;
  hand.forEach((domain, index) => {
    turn = domain === hand[index - 1] ? turn + 1 : 0;
    (turns[turn] ??= []).push(domain);
  });
  return turns.flat();
}

/** Groups that are alike, with the members of each. */
interface AlikeGroups extends GroupKind {
  readonly members: number[][];
}

/** Sorts the groups by size and tolerance; a member that fills no group is a group that may lose itself. */
function alikeGroups({ groupOf, tolerance }: FaultGroups): AlikeGroups[] {
  const membersOf = Array.from(tolerance, (): number[] => []);
  const outside: number[][] = [];
  groupOf.forEach((group, member) => (group < 0 ? outside.push([member]) : membersOf[group]!.push(member)));
  const kinds = new Map<string, { size: number; tolerance: number; members: number[][] }>();
  const add = (members: number[], most: number): void => {
    const key = `${members.length} ${most}`;
    const kind = kinds.get(key) ?? { size: members.length, tolerance: most, members: [] };
    kind.members.push(members);
    kinds.set(key, kind);
  };
  membersOf.forEach((members, group) => add(members, tolerance[group]!));
  for (const members of outside) add(members, Infinity);
  return [...kinds.values()].map((kind) => ({ ...kind, groups: kind.members.length }));
}
