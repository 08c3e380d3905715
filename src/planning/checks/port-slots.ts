import type { Family } from "../addressing";
import type { PlanRow } from "../workbook-model";
import { controllersOf, foldName, portNamesOf, type NetworkFacts, type PlanIndex } from "./plan-index";

/** An address that a controller port of an array ought to have, but for which the Ports table has no row. */
export interface MissingPort {
  readonly controller: string;
  readonly port: string;
  /** Network whose turn it is. */
  readonly network: NetworkFacts;
}

/**
 * Lists what the Ports table lacks for an array: of each address family that the networks of its site have, one row for each port.
 *
 * The p-th port of a controller takes the networks of a family in turn, in the order of their rows.
 */
export function missingPorts(index: PlanIndex, array: PlanRow<"arrays">): MissingPort[] {
  const [controllers, ports] = [controllersOf(array), portNamesOf(array)];
  const networks = index.networksOfSite(array.site).filter(({ prefix }) => prefix !== null);
  if (controllers === null || ports === null || array.site === "" || networks.length === 0) return [];
  const there = new Set<string>();
  for (const { row, network, address } of index.portsOf(array)) {
    // A row that names neither a network nor an address may be of any family.
    const families = network !== null && network.prefix !== null ? [network.prefix.family] : address !== null ? [address.family] : ([4, 6] as const);
    for (const family of families) there.add(slot(row.controller, row.port, family));
  }
  const lanes = ([4, 6] as const).map((family) => networks.filter(({ prefix }) => prefix!.family === family)).filter((lane) => lane.length > 0);
  return controllers.flatMap((controller) =>
    ports.flatMap((port, at) =>
      lanes.flatMap((lane): MissingPort[] => {
        const network = lane[at % lane.length]!;
        return there.has(slot(controller, port, network.prefix!.family)) ? [] : [{ controller, port, network }];
      }),
    ),
  );
}

function slot(controller: string, port: string, family: Family): string {
  return `${foldName(controller)}\n${foldName(port)}\n${family}`;
}
