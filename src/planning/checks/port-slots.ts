import type { Family } from "../addressing";
import type { PlanRow } from "../workbook-model";
import { controllersOf, foldName, portNamesOf, type NetworkFacts, type PlanIndex } from "./plan-index";

/** An address that a controller port of an array ought to have. */
export interface ExpectedPort {
  readonly controller: string;
  readonly port: string;
  /** Network that its row names, else the one whose turn it is. */
  readonly network: NetworkFacts;
  /** Its row in the Ports table; null where there is none. */
  readonly row: PlanRow<"ports"> | null;
}

const expected = new WeakMap<PlanIndex, Map<PlanRow<"arrays">, readonly ExpectedPort[]>>();

/**
 * Lists what the Ports table ought to hold for an array: controller by controller, port by port, one row for each address family that
 * the networks of its site have.
 *
 * The p-th port of a controller takes the networks of a family in turn, in the order of their rows. A row that names neither a network
 * nor an address may be of any family: it is taken for the first that lacks one.
 */
export function expectedPorts(index: PlanIndex, array: PlanRow<"arrays">): readonly ExpectedPort[] {
  const known = expected.get(index) ?? new Map<PlanRow<"arrays">, readonly ExpectedPort[]>();
  expected.set(index, known);
  let list = known.get(array);
  if (list === undefined) {
    list = workOut(index, array);
    known.set(array, list);
  }
  return list;
}

function workOut(index: PlanIndex, array: PlanRow<"arrays">): ExpectedPort[] {
  const [controllers, ports] = [controllersOf(array), portNamesOf(array)];
  const networks = array.site === "" ? [] : index.networksOfSite(array.site).filter(({ prefix }) => prefix !== null);
  if (controllers === null || ports === null || networks.length === 0) return [];
  const rows = new Map<string, { readonly row: PlanRow<"ports">; readonly network: NetworkFacts | null }>();
  for (const { row, network, address } of index.portsOf(array)) {
    const key = slot(row.controller, row.port, network?.prefix?.family ?? address?.family ?? null);
    if (!rows.has(key)) rows.set(key, { row, network });
  }
  const lanes = ([4, 6] as const).map((family) => networks.filter(({ prefix }) => prefix!.family === family)).filter((lane) => lane.length > 0);
  return controllers.flatMap((controller) =>
    ports.flatMap((port, at) =>
      lanes.map((lane): ExpectedPort => {
        const turn = lane[at % lane.length]!;
        const own = slot(controller, port, turn.prefix!.family);
        const key = rows.has(own) ? own : slot(controller, port, null);
        const found = rows.get(key);
        rows.delete(key);
        return { controller, port, network: found?.network?.prefix ? found.network : turn, row: found?.row ?? null };
      }),
    ),
  );
}

/** Lists the expected ports of an array that have no row in the Ports table. */
export function missingPorts(index: PlanIndex, array: PlanRow<"arrays">): ExpectedPort[] {
  return expectedPorts(index, array).filter(({ row }) => row === null);
}

/** Names the use of a port's address: controllers that share the address of a port number have one use of it. */
export function portUse(array: string, sharing: string, controller: string, port: string): string {
  return `port\n${foldName(array)}\n${sharing === "array" ? "" : foldName(controller)}\n${foldName(port)}`;
}

function slot(controller: string, port: string, family: Family | null): string {
  return `${foldName(controller)}\n${foldName(port)}\n${family ?? ""}`;
}
