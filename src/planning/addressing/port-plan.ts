import { foldName, invalid, noAnswer, quote } from "../text";
import { compareAddresses, formatAddress, type Address } from "./address";
import type { Family } from "./family";
import { FreeAddresses } from "./free-addresses";
import { freeBesideKept, type KeptAddress } from "./kept";
import { checkNetworks, refuseTwice, takenByNetwork, type PortNetwork } from "./port-network";
import { containsAddress } from "./prefix";
import { RangeList } from "./ranges";

/** "controller": every controller port has its own address; "array": one address a port number, held by the working controller. */
export type PortSharing = "controller" | "array";

/** An array whose ports want addresses. Arrays with the same port names should share one list: it is looked up only once then. */
export interface PortArray {
  readonly name: string;
  readonly controllers: readonly string[];
  readonly ports: readonly string[];
  /** How this array shares its addresses, where it differs from the others. */
  readonly sharing?: PortSharing | null;
  readonly row: number;
}

/** An address that a port has already. */
export interface KeptPort extends KeptAddress {
  readonly array: string;
  readonly controller: string;
  readonly port: string;
  /** Network it is on, where the table says so; it only matters where several networks hold the address. */
  readonly network?: string | null;
}

/** One address of one controller port. */
export interface PlannedPort {
  readonly array: string;
  readonly controller: string;
  readonly port: string;
  readonly network: PortNetwork;
  readonly address: Address;
}

/** A network while addresses are given away. */
interface Pool {
  readonly network: PortNetwork;
  readonly kept: KeptAddress[];
  free: FreeAddresses;
}

/** A kept row that belongs to a port of the plan. */
interface Held {
  readonly pool: Pool;
  readonly address: Address;
  readonly row: number;
}

/**
 * Gives every controller port of every array an address, array by array, controller by controller, port by port.
 *
 * The p-th port of a controller uses network ((p−1) mod n)+1 of the n networks. Networks of the two families are counted apart: with
 * both, every port gets an address in each (dual stack), in two rows. A kept address never moves, even where another network would
 * be its turn; one kept for a port that is no longer there stays taken. The rest get the lowest free address of their network, so
 * adding, removing or reordering arrays moves nothing that is kept.
 *
 * Refuses names given twice, networks that overlap within one routing table, gateways outside their network and kept addresses that
 * cannot stand. No answer where a network is full.
 */
export function planPorts(
  arrays: readonly PortArray[],
  networks: readonly PortNetwork[],
  kept: readonly KeptPort[] = [],
  sharing: PortSharing = "controller",
): PlannedPort[] {
  refuseTwice(arrays, "arrays");
  checkNetworks(networks);
  const pools = networks.map((network): Pool => ({ network, kept: [], free: new FreeAddresses(new RangeList(network.prefix.family)) }));
  const lanes = ([4, 6] as const)
    .map((family) => new Lane(family, pools.filter((pool) => pool.network.prefix.family === family)))
    .filter((lane) => lane.pools.length > 0);
  const slots = new Slots(arrays, sharing);
  const gone: KeptPort[] = [];
  for (const one of kept) {
    const slot = slots.find(one);
    if (slot === null) gone.push(one);
    else laneOf(lanes, one).keep(one, slot);
  }
  for (const one of gone) lanes.find(({ family }) => family === one.address.family)?.keepGone(one);
  for (const pool of pools) pool.free = new FreeAddresses(freeBesideKept(pool.network.prefix, takenByNetwork(pool.network), pool.kept));
  const planned: PlannedPort[] = [];
  slots.forEach((slot) => {
    for (const lane of lanes) planned.push(lane.plan(slot));
  });
  return planned;
}

/** One controller port: where it stands in its array, and the number under which its address is known. */
interface Slot {
  readonly array: PortArray;
  readonly controller: number;
  readonly port: number;
  readonly key: number;
  readonly shared: boolean;
}

/** All controller ports of a plan. Those that share an address have one key. */
class Slots {
  private readonly places = new Map<string, number>();
  private readonly bases: number[] = [];
  private readonly indices = new Map<readonly string[], Map<string, number>>();

  constructor(
    private readonly arrays: readonly PortArray[],
    private readonly sharing: PortSharing,
  ) {
    let base = 0;
    arrays.forEach((array, place) => {
      this.places.set(foldName(array.name), place);
      this.bases.push(base);
      base += array.controllers.length * array.ports.length;
    });
  }

  /** Finds the controller port that a kept row is about; null where the plan has none such. */
  find(kept: KeptPort): Slot | null {
    const place = this.places.get(foldName(kept.array));
    if (place === undefined) return null;
    const array = this.arrays[place]!;
    const controller = this.indexOf(array.controllers, kept.controller);
    const port = this.indexOf(array.ports, kept.port);
    return controller === undefined || port === undefined ? null : this.slot(place, controller, port);
  }

  forEach(visit: (slot: Slot) => void): void {
    this.arrays.forEach(({ controllers, ports }, place) => {
      for (let controller = 0; controller < controllers.length; controller++) {
        for (let port = 0; port < ports.length; port++) visit(this.slot(place, controller, port));
      }
    });
  }

  private slot(place: number, controller: number, port: number): Slot {
    const array = this.arrays[place]!;
    const shared = (array.sharing ?? this.sharing) === "array";
    return { array, controller, port, key: this.bases[place]! + (shared ? 0 : controller * array.ports.length) + port, shared };
  }

  private indexOf(names: readonly string[], name: string): number | undefined {
    let index = this.indices.get(names);
    if (index === undefined) {
      index = new Map(names.map((one, place) => [foldName(one), place]));
      this.indices.set(names, index);
    }
    return index.get(foldName(name));
  }
}

/** The networks of one family, and the addresses the ports have in them. */
class Lane {
  private readonly held: (Held | undefined)[] = [];
  /** Rows of the controllers that share an address, by what they say. */
  private readonly rows = new Map<string, number>();
  /** Array, port and address of what controllers share, or shared. */
  private readonly uses = new Set<string>();

  constructor(
    readonly family: Family,
    readonly pools: readonly Pool[],
  ) {}

  keep(kept: KeptPort, slot: Slot): void {
    const pool = this.poolOf(kept, slot);
    if (pool === null) throw nowhere(kept);
    const earlier = this.held[slot.key];
    if (slot.shared) {
      this.refuseSecondRow(kept, slot);
      this.uses.add(useOf(kept));
    }
    if (earlier !== undefined) refuseSecondAddress(kept, earlier, slot.shared);
    else {
      this.held[slot.key] = { pool, address: kept.address, row: kept.row };
      pool.kept.push(kept);
    }
  }

  /** Holds the address of a port that is no longer there; rows of controllers that shared it are one use. */
  keepGone(kept: KeptPort): void {
    const use = useOf(kept);
    if (this.uses.has(use)) return;
    this.uses.add(use);
    this.poolOf(kept, null)?.kept.push(kept);
  }

  plan(slot: Slot): PlannedPort {
    const held = this.held[slot.key];
    const pool = held === undefined ? this.turnOf(slot.port) : held.pool;
    const address = held === undefined ? (pool.free.take() ?? refuseFull(pool.network, slot)) : held.address;
    if (held === undefined && slot.shared) this.held[slot.key] = { pool, address, row: 0 };
    const { array, controller, port } = slot;
    return { array: array.name, controller: array.controllers[controller]!, port: array.ports[port]!, network: pool.network, address };
  }

  private turnOf(port: number): Pool {
    return this.pools[port % this.pools.length]!;
  }

  /** Finds the network of a kept address: the one named, else the one whose turn it is, else any that holds it. */
  private poolOf(kept: KeptPort, slot: Slot | null): Pool | null {
    const holds = (pool: Pool): boolean => containsAddress(pool.network.prefix, kept.address);
    const folded = foldName(kept.network ?? "");
    if (folded !== "") {
      const named = this.pools.find((pool) => foldName(pool.network.name) === folded);
      if (named !== undefined && holds(named)) return named;
    }
    if (slot !== null && holds(this.turnOf(slot.port))) return this.turnOf(slot.port);
    return this.pools.find(holds) ?? null;
  }

  /** One row a controller is right where controllers share an address, two rows of one controller are not. */
  private refuseSecondRow(kept: KeptPort, slot: Slot): void {
    const id = `${slot.key} ${slot.controller}`;
    const row = this.rows.get(id);
    if (row !== undefined) throw secondRow(kept, row);
    this.rows.set(id, kept.row);
  }
}

function laneOf(lanes: readonly Lane[], kept: KeptPort): Lane {
  const lane = lanes.find(({ family }) => family === kept.address.family);
  if (lane === undefined) throw nowhere(kept);
  return lane;
}

function useOf({ array, port, address }: KeptPort): string {
  return [foldName(array), foldName(port), formatAddress(address)].join(" ");
}

function refuseSecondAddress(kept: KeptPort, earlier: Held, shared: boolean): void {
  if (!shared) throw secondRow(kept, earlier.row);
  if (compareAddresses(kept.address, earlier.address) === 0) return;
  const place = `kept row ${kept.row}`;
  const text = formatAddress(kept.address);
  throw invalid(place, text, `${place} keeps ${text}, but row ${earlier.row} keeps ${formatAddress(earlier.address)} and its controllers share one. Keep one.`);
}

function secondRow(kept: KeptPort, row: number): Error {
  const place = `kept row ${kept.row}`;
  return invalid(place, kept.port, `${place} is a second one for ${quote(kept.array)} port ${quote(kept.port)}, after row ${row}. Keep one of them.`);
}

function nowhere(kept: KeptPort): Error {
  const place = `kept row ${kept.row}`;
  const text = formatAddress(kept.address);
  return invalid(place, text, `${place} keeps ${text}, which is in none of the networks. Change or remove that row.`);
}

function refuseFull(network: PortNetwork, slot: Slot): never {
  const port = `${quote(slot.array.name)} port ${slot.array.ports[slot.port]!}`;
  throw noAnswer("networks", network.name, `network ${quote(network.name)} has no free address left for ${port}. Give it a larger prefix.`);
}
