import { assignAddresses, formatAddress, formatPrefix, parseAddress, parseBlocks, parsePrefix, RangeList, type Address } from "../addressing";
import { addressCells, expectedPorts, PlanIndex, portUse, type ExpectedPort, type NetworkFacts } from "../plan/model";
import { foldName } from "../text";
import { noAnswer, Problem } from "../text";
import type { WorkbookSnapshot } from "../../sheet";
import { appendRows, type CellWrite, type Changes } from "../plan/changes";
import { requireTables, type PlanRow } from "../plan/read";
import type { TableRow } from "../plan/schema";

/** Somebody who wants an address of a network: what for, and what is written once there is one. */
interface Want {
  readonly use: string;
  readonly label: string;
  readonly write: (address: string) => void;
}

/**
 * Plans an address for every port of every array, and for every cluster without a shared address; what stands stays.
 *
 * The p-th port of a controller takes the networks of its site in turn, each address family apart, as PORTPLAN does; a row that names
 * its network gets one of that. The lowest free address comes first: gateways, what a network keeps back, and all addresses of ports,
 * clusters and hosts are passed over. Arrays come in the order of their rows, the clusters after them.
 *
 * Refuses an address, prefix or range that cannot be read, and a table that is missing; no answer where a network is full.
 */
export function assignPlanAddresses(workbook: WorkbookSnapshot): Changes {
  const index = new PlanIndex(workbook);
  requireTables(index.plan, ["arrays", "networks", "ports"]);
  refuseUnreadable(index);

  const writes: CellWrite[] = [];
  const added: TableRow<"ports">[] = [];
  const write = (key: "ports" | "clusters", row: number, column: string, value: string): void => {
    const cell = index.write(key, row, column, value);
    if (cell !== null) writes.push(cell);
  };
  const wants = new Map<NetworkFacts, Want[]>();
  const want = (network: NetworkFacts, one: Want): void => {
    const list = wants.get(network);
    if (list === undefined) wants.set(network, [one]);
    else list.push(one);
  };

  for (const array of index.rows("arrays")) {
    for (const port of expectedPorts(index, array)) {
      if (port.row !== null && port.row.address !== "") continue;
      // The row is made at once, so that rows stand in the order of arrays and ports, whatever network they are in.
      const row: Record<string, string> | null = port.row === null ? { array: array.array, controller: port.controller, port: port.port, network: port.network.row.network } : null;
      if (row !== null) added.push(row);
      want(port.network, wantOf(array, port, (address) => {
        if (row !== null) row.address = address;
        else {
          write("ports", port.row!.row, "address", address);
          if (port.row!.network === "") write("ports", port.row!.row, "network", port.network.row.network);
        }
      }));
    }
  }
  for (const row of index.rows("clusters")) {
    const network = row.sharedAddress === "" ? index.network(row.network) : null;
    if (network?.prefix) want(network, { use: `cluster\n${row.row}`, label: `cluster ${row.cluster}`, write: (address) => write("clusters", row.row, "sharedAddress", address) });
  }

  const used = addressesByNetwork(index);
  for (const [network, list] of wants) fillNetwork(network, list, used.get(network) ?? []);
  const appended = appendRows(workbook, index.table("ports")!, "ports", added);
  return { writes: [...writes, ...appended.writes], growths: appended.growths };
}

function wantOf(array: PlanRow<"arrays">, { controller, port }: ExpectedPort, write: Want["write"]): Want {
  return { use: portUse(array.array, foldName(array.portSharing), controller, port), label: `${array.array} port ${controller}/${port}`, write };
}

/** An address in use, and by whom. */
interface Used {
  readonly use: string;
  readonly address: Address;
}

function addressesByNetwork(index: PlanIndex): ReadonlyMap<NetworkFacts, readonly Used[]> {
  const used = new Map<NetworkFacts, Used[]>();
  for (const { network, use, address } of addressCells(index)) {
    if (network === null) continue;
    const list = used.get(network);
    if (list === undefined) used.set(network, [{ use, address }]);
    else list.push({ use, address });
  }
  return used;
}

/** Gives each use one address of a network: controllers that share a port number's are one use. */
function fillNetwork(network: NetworkFacts, wants: readonly Want[], used: readonly Used[]): void {
  const prefix = network.prefix!;
  const taken = new RangeList(prefix.family);
  const { gateway, reserved } = network;
  if (gateway !== null && typeof gateway !== "string" && gateway.family === prefix.family) taken.addRange(gateway, gateway);
  for (const { first, last } of reserved ?? []) if (first.family === prefix.family) taken.addRange(first, last);
  const addresses = new Map<string, Address>();
  for (const { use, address } of used) {
    if (address.family !== prefix.family) continue;
    taken.addRange(address, address);
    if (!addresses.has(use)) addresses.set(use, address);
  }
  const names = new Map<string, Want>();
  for (const one of wants) if (!addresses.has(one.use) && !names.has(one.use)) names.set(one.use, one);
  const assigned = assignOrExplain(network, [...names.values()], taken);
  [...names.keys()].forEach((use, at) => addresses.set(use, assigned[at]!));
  for (const one of wants) one.write(formatAddress(addresses.get(one.use)!));
}

function assignOrExplain(network: NetworkFacts, wants: readonly Want[], taken: RangeList): Address[] {
  try {
    return assignAddresses(network.prefix!, wants.map(({ use }, at) => ({ name: use, row: at + 1 })), [], taken);
  } catch (thrown) {
    if (!(thrown instanceof Problem) || thrown.kind !== "no-answer") throw thrown;
    const last = wants.find(({ use }) => use === thrown.received);
    const { row, prefix } = network;
    throw noAnswer("Networks", row.network, `Network ${row.network} (${formatPrefix(prefix!)}) has no address left for ${last?.label ?? "a port"}. Give it a larger prefix.`);
  }
}

/** Refuses the first cell that must be read and cannot: an address that is not seen might be given away again. */
function refuseUnreadable(index: PlanIndex): void {
  for (const { row, gateway, reserved } of index.networks) {
    const place = `Networks row ${row.row + 1}`;
    if (row.prefix !== "") parsePrefix(row.prefix, `${place} prefix`);
    if (gateway === null) parseAddress(row.gateway, `${place} gateway`);
    if (reserved === null) parseBlocks(row.reserved, `${place} reserved`);
  }
  for (const { row, address } of index.ports) if (row.address !== "" && address === null) parseAddress(row.address, `Ports row ${row.row + 1} address`);
  for (const row of index.rows("clusters")) if (row.sharedAddress !== "") parseAddress(row.sharedAddress, `Clusters row ${row.row + 1} shared address`);
  for (const row of index.rows("hosts")) if (row.address !== "") parseAddress(row.address, `Hosts row ${row.row + 1} address`);
}
