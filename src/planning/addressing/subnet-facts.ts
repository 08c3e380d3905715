import { formatAddress } from "./address";
import { anycastRange, assignableRanges } from "./assignable";
import { countAddresses, countHosts, firstHost, hostBits, lastHost } from "./hosts";
import { formatMask, formatWildcard } from "./netmask";
import { formatPrefix, lastAddress, type Interface, type Prefix } from "./prefix";
import { addressOfWords, countInRanges } from "./ranges";
import { reverseZones } from "./reverse-name";
import { specialPurposeOf, type SpecialPurpose } from "./special-purpose";

/** One fact about a subnet. A count is exact: text where a sheet's number would lose digits. */
export interface SubnetFact {
  readonly fact: string;
  readonly value: string | number;
  /** Where the fact comes from, or what it means. */
  readonly note: string;
}

/** Lists every fact about the subnet an address lies in, with the RFC that says so in the note. */
export function subnetFacts(one: Interface): SubnetFact[] {
  const prefix = one.network;
  const ipv4 = prefix.family === 4;
  const fact = (name: string, value: string | number, note: string): SubnetFact => ({ fact: name, value, note });
  const last = formatAddress(lastAddress(prefix));
  return [
    fact("Prefix", formatPrefix(prefix), ipv4 ? "RFC 4632 section 3.1" : "RFC 4291 section 2.3, written as RFC 5952"),
    fact("Address", formatAddress(one.address), "as given"),
    fact("Length", prefix.length, `${hostBits(prefix)} bits number the hosts`),
    ...(ipv4 ? [fact("Netmask", formatMask(prefix.length), "RFC 950"), fact("Wildcard", formatWildcard(prefix.length), "the mask inverted")] : []),
    fact("Network", formatAddress(prefix.first), networkNote(prefix)),
    ...(ipv4
      ? [fact("Broadcast", hostBits(prefix) > 1 ? last : "none", broadcastNote(prefix))]
      : [fact("Last address", last, "IPv6 has no broadcast address (RFC 4291 section 2)")]),
    fact("First host", formatAddress(firstHost(prefix)), hostNote(prefix)),
    fact("Last host", formatAddress(lastHost(prefix)), hostNote(prefix)),
    fact("Addresses", exact(countAddresses(prefix)), `2^${hostBits(prefix)}`),
    fact("Hosts", exact(countHosts(prefix)), hostNote(prefix)),
    ...anycastFacts(prefix),
    ...zoneFacts(prefix),
    purposeFact(specialPurposeOf(prefix)),
  ];
}

/** A sheet keeps 15 digits of a number: a longer count is text. */
function exact(count: bigint): string | number {
  return count < 10n ** 15n ? Number(count) : String(count);
}

function networkNote(prefix: Prefix): string {
  const bits = hostBits(prefix);
  if (prefix.family === 4) return bits > 1 ? "names the network, no host (RFC 950)" : bits === 1 ? "a host too (RFC 3021)" : "the host itself";
  return bits > 1 ? "subnet-router anycast, no host (RFC 4291 section 2.6.1)" : bits === 1 ? "a host too (RFC 6164)" : "the host itself";
}

function broadcastNote(prefix: Prefix): string {
  const bits = hostBits(prefix);
  return bits > 1 ? "all hosts of the network (RFC 919, RFC 950)" : bits === 1 ? "a /31 has none (RFC 3021)" : "a /32 is one host";
}

function hostNote(prefix: Prefix): string {
  const bits = hostBits(prefix);
  if (bits === 0) return "one host";
  if (prefix.family === 4) return bits === 1 ? "both ends of a point-to-point link (RFC 3021)" : "without network and broadcast address (RFC 950)";
  return bits === 1 ? "both ends of a point-to-point link (RFC 6164)" : "without the subnet-router anycast address (RFC 4291)";
}

function anycastFacts(prefix: Prefix): SubnetFact[] {
  const anycast = anycastRange(prefix);
  if (anycast === null) return [];
  const first = formatAddress(addressOfWords(anycast.first, 0, 6));
  const last = formatAddress(addressOfWords(anycast.last, 0, 6));
  return [
    { fact: "Reserved anycast", value: `${first}-${last}`, note: "not given to hosts (RFC 2526)" },
    { fact: "Assignable", value: exact(countInRanges(assignableRanges(prefix))), note: "hosts without reserved anycast (RFC 2526)" },
    ...(prefix.length === 64 ? [] : [{ fact: "Interface identifiers", value: `${hostBits(prefix)} bits`, note: "hosts on a link want 64, a /64 (RFC 4291 section 2.5.1)" }]),
  ];
}

function zoneFacts(prefix: Prefix): SubnetFact[] {
  const { count, first, last, source } = reverseZones(prefix);
  if (count > 1) return [{ fact: "Reverse zones", value: `${first} to ${last}`, note: `${count} zones (${source})` }];
  const note = source === "RFC 2317" ? "classless delegation; a dash may stand for the slash (RFC 2317)" : source;
  return [{ fact: "Reverse zone", value: first, note }];
}

function purposeFact(purpose: SpecialPurpose | null): SubnetFact {
  if (purpose === null) return { fact: "Purpose", value: "global", note: "in no special-purpose registry (RFC 6890)" };
  return { fact: "Purpose", value: purpose.name, note: `${formatPrefix(purpose.prefix)}, ${purpose.source}` };
}
