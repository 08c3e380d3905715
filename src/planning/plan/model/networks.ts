import {
  compareAddresses, containsAddress, firstHost, lastHost, parseBlocks, parsePrefix, readAddress, type Address, type Block, type Prefix,
} from "../../addressing";
import { foldName, splitNames } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { orNull } from "./refusal";

/** What a network carries where its row says nothing, in bytes (IEEE 802.3). */
export const usualMtu = 1500;

/** Header of 14 bytes, VLAN tag of 4 and check sequence of 4 around a packet (IEEE 802.3 clause 3.1.1, IEEE 802.1Q clause 9.6). */
const frameAround = 22;

/** Says how large a frame a packet of so many bytes fills, in bytes. */
export function frameFor(mtu: number): number {
  return mtu + frameAround;
}

/** What a network is for. */
export const networkRoles = ["data", "management", "replication", "cluster"] as const;
export type NetworkRole = (typeof networkRoles)[number];

/** A network as its row says, with what could be read of it. */
export interface Network {
  readonly row: PlanRow<"networks">;
  readonly prefix: Prefix | null;
  /** "none" where the row says so, "blank" where it says nothing, null where it cannot be read. */
  readonly gateway: Address | "none" | "blank" | null;
  readonly reserved: readonly Block[] | null;
  /** Routing table without case; "" is the common one. */
  readonly routing: string;
  /** False where its row says that it is none of IP: what its prefix, gateway, MTU and Reserved say is not read. */
  readonly isIp: boolean;
  readonly mtu: number;
  /** What it is for; nothing where its row does not say, or says what is no role. */
  readonly roles: ReadonlySet<NetworkRole>;
}

/** The networks of a plan. */
export class Networks {
  /** Lists every network in the order of its row. */
  readonly all = once((): readonly Network[] => this.rows.rows("networks").map((row) => readNetwork(row, this.routingAt(row.site))));

  /** Lists the customers of the sites, each once, as they are spelt first. */
  readonly customers = once((): readonly string[] => {
    const named = groupBy(this.rows.rows("sites").map(({ customer }) => customer), foldName);
    return [...named].flatMap(([key, [first = ""]]) => (key === "" ? [] : [first]));
  });

  private readonly byRow = once(() => new Map(this.all().map((network) => [network.row, network])));

  private readonly bySite = oncePer((site: string) => this.all().filter(({ row }) => row.site === "" || foldName(row.site) === site));

  /** Names, in lower case, the networks that a switch carries. */
  readonly carriedBy = oncePer((row: PlanRow<"switches">): ReadonlySet<string> => new Set(splitNames(row.networks).map(foldName)));

  /** Lists the networks that a switch carries, in the order of their rows. */
  readonly carriedOn = oncePer((row: PlanRow<"switches">): readonly Network[] => {
    const names = this.carriedBy(row);
    return this.all().filter(({ row: { network } }) => names.has(foldName(network)));
  });

  constructor(private readonly rows: PlanRows) {}

  /** Names the routing table of what lies at a site in no network that names one: with several customers each has its own, else there is the common one. */
  routingAt(site: string): string {
    const customer = this.customers().length < 2 ? "" : foldName(this.rows.find("sites", site)?.customer ?? "");
    return customer === "" ? "" : `customer\n${customer}`;
  }

  /** Finds a network by its name; null where there is none. */
  named(name: string): Network | null {
    const row = this.rows.find("networks", name);
    return row === null ? null : (this.byRow().get(row) ?? null);
  }

  /** Lists the networks that reach a site: its own, and those of no site. */
  ofSite(site: string): readonly Network[] {
    return this.bySite(foldName(site));
  }

  /** Finds the first network that reaches a site and in which an address lies. */
  holding(site: string, address: Address): Network | null {
    return this.ofSite(site).find(({ prefix }) => prefix !== null && containsAddress(prefix, address)) ?? null;
  }
}

function readNetwork(row: PlanRow<"networks">, routing: string): Network {
  const gateway = foldName(row.gateway);
  const isIp = row.kind !== "other";
  return {
    row,
    isIp,
    prefix: isIp ? orNull(() => parsePrefix(row.prefix)) : null,
    gateway: gateway === "none" || !isIp ? "none" : gateway === "" ? "blank" : readAddress(row.gateway),
    reserved: isIp ? orNull(() => parseBlocks(row.reserved)) : [],
    routing: row.routing === "" ? routing : foldName(row.routing),
    mtu: row.mtu ?? usualMtu,
    roles: new Set(networkRoles.filter((role) => splitNames(row.role).some((word) => foldName(word) === role))),
  };
}

/**
 * Puts networks in the order in which ports take them: data networks first, side A before B, then those that do not say what they are for,
 * then the others by role; of one kind those of the site before those that reach every site. Networks that do not differ in this stay in the order of their rows.
 */
export function inPortOrder(networks: readonly Network[]): readonly Network[] {
  const rank = ({ roles, row: { side, site } }: Network): number => {
    const kind = roles.has("data") ? (side === "B" ? 1 : 0) : roles.size === 0 ? 2 : 3 + networkRoles.findIndex((role) => roles.has(role));
    return 2 * kind + (site === "" ? 1 : 0);
  };
  return [...networks].sort((a, b) => rank(a) - rank(b));
}

/** Gives the address of a network's gateway; null where it has none, or none that can be read. */
export function gatewayAddress({ gateway }: Network): Address | null {
  return gateway === null || typeof gateway === "string" ? null : gateway;
}

/** Tells whether an address lies in what a network keeps back. */
export function isReserved({ reserved }: Network, address: Address): boolean {
  return (reserved ?? []).some(({ first, last }) => address.family === first.family && isBetween(address, first, last));
}

/** Tells whether a host of a network may hold this address: it is neither outside, nor the network's own, nor its broadcast address. */
export function isHostOf(prefix: Prefix, address: Address): boolean {
  return containsAddress(prefix, address) && isBetween(address, firstHost(prefix), lastHost(prefix));
}

function isBetween(address: Address, first: Address, last: Address): boolean {
  return compareAddresses(first, address) <= 0 && compareAddresses(address, last) <= 0;
}
