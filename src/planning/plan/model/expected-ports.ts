import type { Family } from "../../addressing";
import type { PlanRow } from "../read";
import { inPortOrder, type Network } from "./networks";
import type { PortFacts, Socket } from "./port-facts";

/** An address that a controller port of an array ought to have. */
export interface ExpectedPort {
  readonly controller: string;
  readonly port: string;
  /** Network that its row names, else the one whose turn it is. */
  readonly network: Network;
  /** Its row in the Ports table; null where there is none. */
  readonly row: PlanRow<"ports"> | null;
}

/**
 * Lists what the Ports table ought to hold for an array: controller by controller, port by port, one row for each address family that
 * the networks of its site have.
 *
 * The p-th port of a controller takes the networks of a family in turn, data networks first (see `inPortOrder`). A row that names neither a network
 * nor an address may be of any family: it is taken for the first that lacks one.
 */
export function expectPorts(sockets: readonly Socket[], networks: readonly Network[], rows: readonly PortFacts[]): readonly ExpectedPort[] {
  const lanes = ([4, 6] as const).map((family) => ({ family, networks: inPortOrder(networks.filter(({ prefix }) => prefix?.family === family)) }));
  const found = new SocketRows(rows);
  return sockets.flatMap(({ controller, port, at, socket }): ExpectedPort[] =>
    lanes.flatMap((lane): ExpectedPort[] => {
      const turn = lane.networks[at % lane.networks.length];
      if (turn === undefined) return [];
      const own = found.take(socket, lane.family);
      return [{ controller, port, network: own?.network?.prefix ? own.network : turn, row: own?.row ?? null }];
    }),
  );
}

/** The port rows of an array by their sockets, each address family apart; the first of two that are alike. */
class SocketRows {
  private readonly byFamily = { 4: new Map<string, PortFacts>(), 6: new Map<string, PortFacts>(), any: new Map<string, PortFacts>() };

  constructor(rows: readonly PortFacts[]) {
    for (const port of rows) {
      const own = this.byFamily[port.network?.prefix?.family ?? port.address?.family ?? "any"];
      if (!own.has(port.socket)) own.set(port.socket, port);
    }
  }

  /** Finds the row of a socket in a family; one that may be of any is given away once. */
  take(socket: string, family: Family): PortFacts | undefined {
    const { any, [family]: own } = this.byFamily;
    const found = own.get(socket);
    if (found !== undefined) return found;
    const open = any.get(socket);
    any.delete(socket);
    return open;
  }
}
