import type { PlanRow } from "../read";
import { foldName } from "../../text";
import type { NetworkFacts, PlanIndex, PortFacts, Socket } from "./plan-index";

/** An address that a controller port of an array ought to have. */
export interface ExpectedPort {
  readonly controller: string;
  readonly port: string;
  /** Network that its row names, else the one whose turn it is. */
  readonly network: NetworkFacts;
  /** Its row in the Ports table; null where there is none. */
  readonly row: PlanRow<"ports"> | null;
}

/**
 * Lists what the Ports table ought to hold for an array: controller by controller, port by port, one row for each address family that
 * the networks of its site have.
 *
 * The p-th port of a controller takes the networks of a family in turn, in the order of their rows. A row that names neither a network
 * nor an address may be of any family: it is taken for the first that lacks one.
 */
export function expectedPorts(index: PlanIndex, array: PlanRow<"arrays">): ExpectedPort[] {
  const list: ExpectedPort[] = [];
  walk(index, array, (socket, turn, found) => list.push(expectedPort(socket, turn, found)));
  return list;
}

const missing = new WeakMap<PlanRow<"arrays">, readonly ExpectedPort[]>();

/** Lists the expected ports of an array that have no row in the Ports table. */
export function missingPorts(index: PlanIndex, array: PlanRow<"arrays">): readonly ExpectedPort[] {
  let list = missing.get(array);
  if (list === undefined) {
    const lacking: ExpectedPort[] = [];
    walk(index, array, (socket, turn, found) => {
      if (found === undefined) lacking.push(expectedPort(socket, turn, found));
    });
    list = lacking;
    missing.set(array, list);
  }
  return list;
}

function expectedPort({ controller, port }: Socket, turn: NetworkFacts, found: PortFacts | undefined): ExpectedPort {
  return { controller, port, network: found?.network?.prefix ? found.network : turn, row: found?.row ?? null };
}

type Visit = (socket: Socket, turn: NetworkFacts, found: PortFacts | undefined) => void;

function walk(index: PlanIndex, array: PlanRow<"arrays">, visit: Visit): void {
  const sockets = index.socketsOf(array);
  const networks = array.site === "" ? [] : index.networksOfSite(array.site).filter(({ prefix }) => prefix !== null);
  if (sockets === null || networks.length === 0) return;
  const lanes = ([4, 6] as const).map((family) => ({ family, networks: networks.filter(({ prefix }) => prefix!.family === family) })).filter((lane) => lane.networks.length > 0);
  const rows = { 4: new Map<string, PortFacts>(), 6: new Map<string, PortFacts>(), any: new Map<string, PortFacts>() };
  for (const port of index.portsOf(array)) {
    const own = rows[port.network?.prefix?.family ?? port.address?.family ?? "any"];
    if (!own.has(port.socket)) own.set(port.socket, port);
  }
  for (const socket of sockets) {
    for (const lane of lanes) {
      let found = rows[lane.family].get(socket.socket);
      if (found === undefined) {
        found = rows.any.get(socket.socket);
        rows.any.delete(socket.socket);
      }
      visit(socket, lane.networks[socket.at % lane.networks.length]!, found);
    }
  }
}

/** Names the use of a port's address: controllers that share the address of a port number have one use of it. */
export function portUse(array: string, sharing: string, controller: string, port: string): string {
  return `port\n${foldName(array)}\n${sharing === "array" ? "" : foldName(controller)}\n${foldName(port)}`;
}
