import { containsAddress, formatAddress, hostNameFault, networkOf, reversePlace, type Address, type Prefix, type ReversePlace } from "../addressing";
import type { PlanModel } from "../plan/model";
import { invalid, quote } from "../text";
import { plannedNames, type PlannedName } from "./planned-names";

/** Lines for a zone file or a hosts file, under one title. */
export interface NameLines {
  readonly title: string;
  readonly lines: readonly string[];
}

/** What becomes of the names of a plan. */
export interface NamesOfPlan {
  /** Why some addresses have no line, as sentences. */
  readonly refused: readonly string[];
  readonly blocks: readonly NameLines[];
}

/**
 * Writes the names of a plan as lines of zone files (RFC 1035 section 5.1; AAAA of RFC 3596) and of a hosts file.
 *
 * `domain` is that of all names. A zone of addresses is that of their network: at an octet or a hexadecimal digit, or classless (RFC 2317), with the
 * lines for the owner of the zone above. Lines hold records alone: SOA and NS are the zone owner's. A name that can be none of a host
 * is refused, not changed. Refuses a domain that is none.
 */
export function namesOfPlan(model: PlanModel, domain: string): NamesOfPlan {
  const zone = domain.trim().replace(/\.$/, "");
  const fault = hostNameFault(zone);
  if (fault !== null) throw invalid("domain", domain, `Domain ${quote(domain)} is no domain name. Write the one of these names, such as example.com.`);
  const refused = new Set<string>();
  const named: PlannedName[] = [];
  for (const one of plannedNames(model)) {
    const why = faultOf(one, zone);
    if (why === null) named.push(one);
    else refused.add(why);
  }
  return {
    refused: [...refused],
    blocks: [
      { title: `Zone ${zone}`, lines: [`$ORIGIN ${zone}.`, ...named.map(({ name, address }) => `${name} IN ${address.family === 4 ? "A" : "AAAA"} ${formatAddress(address)}`)] },
      ...reverseBlocks(named, zone),
      { title: "Hosts file", lines: named.map(({ name, address }) => `${formatAddress(address)} ${name}.${zone} ${name}`) },
    ].filter(({ lines }) => lines.some((line) => !line.startsWith("$"))),
  };
}

/** A dot in the name of a device would make a name below another domain. */
function faultOf({ device, name }: PlannedName, zone: string): string | null {
  if (device.includes(".")) return `${quote(device)} holds a dot, so it would be a name in another domain. Write it without.`;
  return hostNameFault(device) ?? hostNameFault(name) ?? hostNameFault(`${name}.${zone}`);
}

function reverseBlocks(named: readonly PlannedName[], zone: string): NameLines[] {
  const zones = new Map<string, string[]>();
  const parents = new Map<string, string[]>();
  const add = (blocks: Map<string, string[]>, place: ReversePlace, record: string): void => {
    const lines = blocks.get(place.zone) ?? [];
    blocks.set(place.zone, lines);
    const line = `${place.name} IN ${record}`;
    if (!lines.includes(line)) lines.push(line);
  };
  for (const { name, address, prefix } of named) {
    const place = reversePlace(address, prefix !== null && containsAddress(prefix, address) ? prefix : usualNetwork(address));
    add(zones, place, `PTR ${name}.${zone}.`);
    if (place.parent !== null) add(parents, place.parent, `CNAME ${place.name}.${place.zone}.`);
  }
  const blocksOf = (blocks: ReadonlyMap<string, readonly string[]>, title: (zone: string) => string): NameLines[] =>
    [...blocks].map(([origin, lines]) => ({ title: title(origin), lines: [`$ORIGIN ${origin}.`, ...lines] }));
  return [...blocksOf(zones, (origin) => `Zone ${origin}`), ...blocksOf(parents, (origin) => `For the owner of ${origin} (RFC 2317)`)];
}

/** Takes an address in no network for one of a /24, or a /64 in IPv6 (RFC 4291 section 2.5.1). */
function usualNetwork(address: Address): Prefix {
  return networkOf(address, address.family === 4 ? 24 : 64);
}
