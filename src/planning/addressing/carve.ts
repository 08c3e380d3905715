import { invalid, noAnswer, quote, type Problem } from "../text";
import { Decimal } from "../quantity";
import type { Address } from "./address";
import { countHosts, firstHost, lastHost } from "./hosts";
import { uniteRanges } from "./merge";
import { findMisfit } from "./misfit";
import { freeBlocks } from "./next-subnet";
import { containsPrefix, formatPrefix, type Prefix } from "./prefix";
import { rangesOfPrefixes, type AddressRanges } from "./ranges";
import { subtractRanges } from "./subtract";

/** A subnet somebody needs. */
export interface Need {
  readonly name: string;
  /** Addresses that devices and gateways take, from 1. */
  readonly hosts: number;
  /** Subnet it has already, which never moves. */
  readonly kept: Prefix | null;
  readonly row: number;
}

/** A need and the subnet that meets it. */
export interface Carved {
  readonly need: Need;
  readonly prefix: Prefix;
  readonly firstHost: Address;
  readonly lastHost: Address;
}

/**
 * Cuts a subnet out of `prefix` for every need.
 *
 * Kept subnets stand; then, in the order given, each need takes the first free aligned subnet that holds its hosts grown by the share
 * `growth` and rounded up. So a need appended without a kept subnet never moves an earlier one. IPv4 subnets are /30 or larger and
 * lose two addresses each (RFC 950); IPv6 needs are a /64 each (RFC 4291 section 2.5.1). Nothing meets `taken`.
 *
 * Refuses a kept subnet that is outside the prefix, too small for its need, taken or met by another one: it is named, never moved.
 * No answer where no room is left.
 */
export function carve(prefix: Prefix, needs: readonly Need[], growth: number, taken: AddressRanges): Carved[] {
  const kept = needs.filter((need) => need.kept !== null);
  for (const need of kept) refuseUnfit(prefix, need, need.kept!, growth);
  const held = rangesOfPrefixes(
    prefix.family,
    kept.map((need) => need.kept!),
  );
  const misfit = findMisfit(held, subtractRanges(rangesOfPrefixes(prefix.family, [prefix]), taken));
  if (misfit !== null) throw explainMeeting(kept[misfit.index]!, misfit.meets === null ? null : kept[misfit.meets]!);
  const blocks = freeBlocks(prefix, uniteRanges([taken, held]));
  return needs.map((need) => {
    const subnet = need.kept ?? blocks.take(lengthFor(prefix, need, growth)) ?? refuseFull(prefix, need, growth);
    return { need, prefix: subnet, firstHost: firstHost(subnet), lastHost: lastHost(subnet) };
  });
}

/** Computes how many hosts a need has after growth: exact, then rounded up to a whole one. */
function grownHosts(need: Need, growth: number): number {
  return new Decimal(growth).plus(1).times(need.hosts).ceil().toNumber();
}

/** Finds the longest length that a need may have; below 0 where not even the whole family holds it. */
function lengthFor(prefix: Prefix, need: Need, growth: number): number {
  if (prefix.family === 6) return 64;
  const hosts = grownHosts(need, growth);
  return hosts + 1 > 0xffff_ffff ? -1 : Math.min(30, Math.clz32(hosts + 1));
}

function refuseUnfit(prefix: Prefix, need: Need, held: Prefix, growth: number): void {
  const place = `needs row ${need.row}`;
  const text = formatPrefix(held);
  const start = `${place}: kept prefix ${text} for ${quote(need.name)}`;
  if (!containsPrefix(prefix, held)) throw invalid(place, text, `${start} is not in ${formatPrefix(prefix)}. Change or clear it.`);
  if (held.length <= lengthFor(prefix, need, growth)) return;
  const hosts = grownHosts(need, growth);
  const longest = prefix.family === 6 ? 64 : 30;
  const why = held.length > longest ? `is longer than /${longest}` : `holds ${countHosts(held)} hosts, not ${hosts}`;
  throw invalid(place, text, `${start} ${why}. Clear it or give a larger one.`);
}

function explainMeeting(need: Need, other: Need | null): Problem {
  const place = `needs row ${need.row}`;
  const text = formatPrefix(need.kept!);
  const met = other === null ? "an address that is taken" : `${formatPrefix(other.kept!)} in row ${other.row}`;
  return invalid(place, text, `${place}: kept prefix ${text} for ${quote(need.name)} meets ${met}. Change one of them.`);
}

function refuseFull(prefix: Prefix, need: Need, growth: number): never {
  const wanted = prefix.family === 6 ? "a /64" : `${grownHosts(need, growth)} hosts`;
  throw noAnswer("needs", need.name, `prefix ${formatPrefix(prefix)} has no room left for ${wanted} of ${quote(need.name)} in needs row ${need.row}.`);
}
