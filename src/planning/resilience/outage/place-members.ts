import { invalid, noAnswer, quote } from "../../text";

/** A domain that members can be placed in. */
export interface Room {
  readonly name: string;
  /** Members it can take; null: any number. */
  readonly room: number | null;
  /** Where it stands, for a sentence about it, such as `domains row 2`. */
  readonly at?: string;
}

/**
 * Places members over domains as evenly as their room allows, and answers the domain of each member.
 *
 * The members go round the domains in their order, passing over those that are full. So the fullest domain holds as few as possible, and
 * members that follow each other, as those of one group do, stand in different domains. Refuses a domain that stands twice, and more members
 * than there is room for.
 */
export function placeMembers(members: readonly string[], domains: readonly Room[]): string[] {
  const known = new Set<string>();
  for (const { name, at = "domains" } of domains) {
    if (known.has(name.toLowerCase())) throw invalid("domains", name, `${at}: ${quote(name)} stands twice. Give each domain one row.`);
    known.add(name.toLowerCase());
  }
  const room = domains.reduce((sum, one) => sum + (one.room ?? members.length), 0);
  if (room < members.length) {
    throw noAnswer("domains", room, `domains have room for ${room} of ${members.length} members. Add a domain or more room.`);
  }
  const placed: string[] = [];
  for (let round = 1, open = domains; placed.length < members.length; round += 1) {
    open = open.filter((one) => one.room === null || one.room >= round);
    for (const { name } of open.slice(0, members.length - placed.length)) placed.push(name);
  }
  return placed;
}
