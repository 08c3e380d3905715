import type { Family } from "../../addressing";
import type { PlanRow } from "../read";
import { inPortOrder, type Network, type NetworkRole } from "./networks";
import { oncePer } from "./once";
import type { PortFacts, Socket } from "./port-facts";

/** An address that a controller port of an array ought to have; a place in a network that is none of IP has none. */
export interface ExpectedPort {
  readonly controller: string;
  readonly port: string;
  /** Network that its row names, else the one whose turn it is. */
  readonly network: Network;
  /** Its row in the Ports table; null where there is none. */
  readonly row: PlanRow<"ports"> | null;
}

/** The networks of one address family that ports take in turn; null for those that are none of IP. */
export interface Lane {
  readonly family: Family | null;
  readonly networks: readonly Network[];
}

/**
 * Lists what the Ports table ought to hold for an array: controller by controller, port by port, one row for each address family that
 * the networks of its site have.
 *
 * Where the model says by `dutyOf` what a port is for, it takes the networks of that role and side, in turn with the other ports of its controller that are for the
 * same; none where its site has none. The p-th of the other ports takes all networks in turn, data networks first (see `inPortOrder`). A place whose
 * turn is a network of another kind than IP is in that one alone. A row that names neither a network nor an address may be of any family: it is taken for the first
 * that lacks one.
 */
export function expectPorts(
  sockets: readonly Socket[],
  lanesOf: (duty: string) => readonly Lane[],
  rows: readonly PortFacts[],
  dutyOf: (socket: Socket) => PlanRow<"modelPorts"> | null,
): readonly ExpectedPort[] {
  const found = new SocketRows(rows);
  const placeOf = placesByDuty();
  const expected: ExpectedPort[] = [];
  for (const one of sockets) {
    const duty = dutyText(dutyOf(one));
    const place = duty === "" ? one.at : placeOf(`${one.controller} ${duty}`);
    const elsewhere = found.take(one.socket, null);
    const lanes = elsewhere === undefined ? lanesOf(duty) : [];
    const first = lanes[0]?.networks[place % lanes[0].networks.length];
    if (elsewhere !== undefined) expected.push(expectAt(one, elsewhere.network!, elsewhere));
    else if (first?.isIp === false) expected.push(expectAt(one, first, found.take(one.socket, 4) ?? found.take(one.socket, 6)));
    else {
      for (const { family, networks } of lanes) {
        const network = networks[place % networks.length]!;
        if (network.isIp && family !== null) expected.push(expectAt(one, network, found.take(one.socket, family)));
      }
    }
  }
  return expected;
}

/** Expects the network that the row of a port names, where that can be read, else the one whose turn it is. */
function expectAt({ controller, port }: Socket, network: Network, own: PortFacts | undefined): ExpectedPort {
  const named = own?.network ?? null;
  return { controller, port, network: named !== null && (named.prefix !== null || !named.isIp) ? named : network, row: own?.row ?? null };
}

/** Makes a function that counts how often it was asked for a key before. */
function placesByDuty(): (key: string) => number {
  const turns = new Map<string, number>();
  return (key) => {
    const place = turns.get(key) ?? 0;
    turns.set(key, place + 1);
    return place;
  };
}

/**
 * Makes the lanes of the networks of a site for each duty that a port may have by `dutyText`; all networks stand in those of none.
 *
 * Networks of other kinds stand in the lanes of both families, so that a port is in one of them or in those of IP.
 */
export function lanesByDuty(all: readonly Network[]): (duty: string) => readonly Lane[] {
  return oncePer((duty) => lanesFor(duty === "" ? all : all.filter((network) => isFor(network, duty, all))));
}

function lanesFor(networks: readonly Network[]): readonly Lane[] {
  const others = networks.filter(({ isIp }) => !isIp);
  const lanes = ([4, 6] as const).flatMap((family): Lane[] => {
    const own = networks.filter(({ prefix }) => prefix?.family === family);
    return own.length === 0 ? [] : [{ family, networks: inPortOrder([...own, ...others]) }];
  });
  return lanes.length > 0 || others.length === 0 ? lanes : [{ family: null, networks: inPortOrder(others) }];
}

/** Writes what a port is for as one text; blank where nobody says. */
function dutyText(duty: PlanRow<"modelPorts"> | null): string {
  return duty === null || duty.role === "" ? "" : `${duty.role} ${duty.side}`;
}

/** Tells whether a network is for ports of a duty: it has the role, and the side where networks of that role at the site name it. */
function isFor(network: Network, duty: string, all: readonly Network[]): boolean {
  const [role, side] = duty.split(" ") as [NetworkRole, string];
  if (!network.roles.has(role)) return false;
  if (side === "") return true;
  const isNamed = all.some((other) => other.roles.has(role) && other.row.side === side);
  return network.row.side === (isNamed ? side : "");
}

/** The port rows of an array by their sockets, each address family apart; the first of two that are alike. */
class SocketRows {
  private readonly byKind = { 4: new Map<string, PortFacts>(), 6: new Map<string, PortFacts>(), other: new Map<string, PortFacts>(), any: new Map<string, PortFacts>() };

  constructor(rows: readonly PortFacts[]) {
    for (const port of rows) {
      const own = this.byKind[port.network?.isIp === false ? "other" : (port.network?.prefix?.family ?? port.address?.family ?? "any")];
      if (!own.has(port.socket)) own.set(port.socket, port);
    }
  }

  /** Finds the row of a socket in a family, or, for null, in a network that is none of IP; one that may be of any family is given away once. */
  take(socket: string, family: Family | null): PortFacts | undefined {
    if (family === null) return this.byKind.other.get(socket);
    const { any, [family]: own } = this.byKind;
    const found = own.get(socket);
    if (found !== undefined) return found;
    const open = any.get(socket);
    any.delete(socket);
    return open;
  }
}
