import { compareAddresses, readAddress, type Address } from "../../addressing";
import type { PlanRow } from "../read";
import { foldName } from "../../text";
import { networkHolding, type NetworkFacts, type PlanIndex } from "./plan-index";
import { portUse } from "./port-slots";

/** A cell of the plan that holds an address in use: of a port, of a cluster or of a host. */
export interface AddressCell {
  readonly table: "ports" | "clusters" | "hosts";
  readonly row: PlanRow<"ports"> | PlanRow<"clusters"> | PlanRow<"hosts">;
  readonly column: "address" | "sharedAddress";
  /** Cells with the same use are one: the address of a port number that controllers share, say. */
  readonly use: string;
  readonly address: Address;
  /** Network that its row names, else the one of its site in which it lies. */
  readonly network: NetworkFacts | null;
}

const cells = new WeakMap<PlanIndex, readonly AddressCell[]>();

/** Lists every address in use that can be read: ports first, then clusters, then hosts. */
export function addressCells(index: PlanIndex): readonly AddressCell[] {
  let list = cells.get(index);
  if (list === undefined) {
    list = [...portCells(index), ...clusterCells(index), ...hostCells(index)];
    cells.set(index, list);
  }
  return list;
}

function portCells(index: PlanIndex): AddressCell[] {
  const cells: AddressCell[] = [];
  for (const { row, array, network, address } of index.ports) {
    if (address === null) continue;
    const use = portUse(row.array, array === null ? "" : foldName(array.portSharing), row.controller, row.port);
    const named = network ?? (array === null ? null : networkHolding(index.networksOfSite(array.site), address));
    cells.push({ table: "ports", row, column: "address", use, address, network: named });
  }
  return cells;
}

function clusterCells(index: PlanIndex): AddressCell[] {
  return index.rows("clusters").flatMap((row): AddressCell[] => {
    const address = row.sharedAddress === "" ? null : readAddress(row.sharedAddress);
    if (address === null) return [];
    return [{ table: "clusters", row, column: "sharedAddress", use: `cluster\n${row.row}`, address, network: index.network(row.network) }];
  });
}

function hostCells(index: PlanIndex): AddressCell[] {
  return index.rows("hosts").flatMap((row): AddressCell[] => {
    const address = row.address === "" ? null : readAddress(row.address);
    if (address === null) return [];
    return [{ table: "hosts", row, column: "address", use: `host\n${row.row}`, address, network: networkHolding(index.networksOfSite(row.site), address) }];
  });
}

/** Names what uses an address, for a sentence. */
export function userOf({ row }: AddressCell): string {
  if ("sharedAddress" in row) return `cluster ${row.cluster}`;
  if ("host" in row) return `host ${row.host}`;
  return `${row.array} port ${row.controller}${row.controller === "" ? "" : "/"}${row.port}`;
}

/** Makes a key under which an address of one routing table is found again, however it is spelt. */
export function addressKey({ family, word0, word1, word2, word3 }: Address, routing: string): string {
  return family === 4 ? `${routing}\n${word3}` : `${routing}\n${word0}:${word1}:${word2}:${word3}`;
}

/** Tells whether an address lies in what a network keeps back. */
export function isReserved(network: NetworkFacts, address: Address): boolean {
  return (network.reserved ?? []).some(({ first, last }) => isBetween(address, first, last));
}

function isBetween(address: Address, first: Address, last: Address): boolean {
  return address.family === first.family && compareAddresses(first, address) <= 0 && compareAddresses(address, last) <= 0;
}
