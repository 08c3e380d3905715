import {
  parseAddress,
  parseControllerNames,
  parsePortNames,
  parsePrefix,
  refuseOtherFamily,
  type Address,
  type Family,
  type KeptPair,
  type KeptPort,
  type Named,
  type Need,
  type PortArray,
  type PortNetwork,
} from "../../planning/addressing";
import { invalid, quote } from "../../planning/text";
import { parseProportion } from "../../planning/quantity";
import { readScalar } from "./cells";
import { readCount } from "./numbers";
import { eachRow, eachText, rowText } from "./prefixes";

/** Reads a range of names, every cell one. */
export function readNames(received: unknown, argument: string): Named[] {
  const names: Named[] = [];
  eachText(received, argument, ["Name", "Names", "Device", "Array"], (name, row) => names.push({ name, row }));
  return names;
}

/** Reads kept pairs: name, address. A row without an address keeps nothing. */
export function readKeptPairs(received: unknown, argument: string, family: Family): KeptPair[] {
  const kept: KeptPair[] = [];
  eachRow(received, argument, ["Name", "Names", "Device", "Array"], (cells, row) => {
    const text = rowText(cells[1], argument, row);
    if (text === null) return;
    const name = requiredText(cells[0], argument, row, "name");
    kept.push({ name, address: parseFamily(text, `${argument} row ${row}`, family), row });
  });
  return kept;
}

/** Reads needs: name, hosts, and the kept prefix where there is one. */
export function readNeeds(received: unknown, argument: string, family: Family): Need[] {
  const needs: Need[] = [];
  eachRow(received, argument, ["Need", "Needs", "Name", "Network", "Subnet"], (cells, row) => {
    const name = requiredText(cells[0], argument, row, "name");
    const hosts = readCount(cells[1], `${argument} row ${row} hosts`, { min: 1, max: 2 ** 32, example: 60 });
    const text = rowText(cells[2], argument, row);
    const place = `${argument} row ${row} kept prefix`;
    const kept = text === null ? null : parsePrefix(text, place);
    if (kept !== null && text !== null) refuseOtherFamily(family, kept.family, text, place);
    needs.push({ name, hosts, kept, row });
  });
  return needs;
}

/** Reads arrays: name, controllers (2 or "A,B"), ports (4 or "0,1,2,3"). Arrays with the same names share one list of them. */
export function readPortArrays(received: unknown, argument: string): PortArray[] {
  const arrays: PortArray[] = [];
  const controllersOf = sharedLists(parseControllerNames);
  const portsOf = sharedLists(parsePortNames);
  eachRow(received, argument, ["Array", "Arrays", "Name"], (cells, row) => {
    const place = `${argument} row ${row}`;
    arrays.push({
      name: requiredText(cells[0], argument, row, "name"),
      controllers: controllersOf(cells[1], `${place} controllers`),
      ports: portsOf(cells[2], `${place} ports`),
      row,
    });
  });
  return arrays;
}

/** Makes a reader of a count or names that answers the same list for the same cell, so that it is looked up only once. */
function sharedLists(parse: typeof parsePortNames): (cell: unknown, place: string) => string[] {
  const lists = new Map<string | number, string[]>();
  return (cell, place) => {
    const scalar = readScalar(cell, place);
    if (scalar === null || typeof scalar === "boolean") throw invalid(place, cell, `${place} is ${quote(scalar)}. Write a count such as 2, or names with commas between.`);
    const list = lists.get(scalar) ?? parse(scalar, place);
    lists.set(scalar, list);
    return list;
  };
}

/** Reads networks: name, prefix, gateway or "none". */
export function readPortNetworks(received: unknown, argument: string): PortNetwork[] {
  const networks: PortNetwork[] = [];
  eachRow(received, argument, ["Network", "Networks", "Name"], (cells, row) => {
    const place = `${argument} row ${row}`;
    const name = requiredText(cells[0], argument, row, "name");
    const prefix = parsePrefix(requiredText(cells[1], argument, row, "prefix"), `${place} prefix`);
    networks.push({ name, prefix, gateway: parseGateway(rowText(cells[2], argument, row), `${place} gateway`), row });
  });
  return networks;
}

/** Reads kept ports: array, controller, port, address. A row without an address keeps nothing. */
export function readKeptPorts(received: unknown, argument: string): KeptPort[] {
  const kept: KeptPort[] = [];
  eachRow(received, argument, ["Array", "Arrays", "Name"], (cells, row) => {
    const text = rowText(cells[3], argument, row);
    if (text === null) return;
    kept.push({
      array: requiredText(cells[0], argument, row, "array"),
      controller: requiredText(cells[1], argument, row, "controller"),
      port: requiredText(cells[2], argument, row, "port"),
      address: parseAddress(text, `${argument} row ${row}`),
      row,
    });
  });
  return kept;
}

/** Reads the share by which needs grow, above -100 % and at most 500 %; a blank is none. */
export function readGrowthOrNone(received: unknown, argument: string): number {
  return parseProportion(readScalar(received, argument), argument, { above: -1, max: 5, default: 0, example: 0.2 });
}

/** Reads a range of addresses of either family, every cell one, with their rows. */
export function readAddressRows(received: unknown, argument: string): { addresses: Address[]; rows: number[] } {
  const addresses: Address[] = [];
  const rows: number[] = [];
  eachText(received, argument, ["Address", "Addresses"], (text, row) => {
    addresses.push(parseAddress(text, `${argument} row ${row}`));
    rows.push(row);
  });
  return { addresses, rows };
}

function parseGateway(text: string | null, place: string): Address | null {
  return text === null || text.toLowerCase() === "none" ? null : parseAddress(text, place);
}

function parseFamily(text: string, place: string, family: Family): Address {
  const address = parseAddress(text, place);
  refuseOtherFamily(family, address.family, text, place);
  return address;
}

function requiredText(cell: unknown, argument: string, row: number, column: string): string {
  const text = rowText(cell, argument, row);
  if (text === null) throw invalid(`${argument} row ${row}`, cell, `${argument} row ${row} has no ${column}. Fill it, or clear the whole row.`);
  return text;
}
