import {
  addBlocks,
  bitsOf,
  parseAddress,
  parseBlock,
  parseInterface,
  parsePrefix,
  RangeList,
  readSubnet,
  refuseOtherFamily,
  type Address,
  type Block,
  type Family,
  type Interface,
  type Prefix,
  type SubnetText,
} from "../../planning/addressing";
import { invalid, quote } from "../../planning/text";
import { atMost } from "./at-most";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { eachCell, type CellsRule } from "./table";

/** Headers of ranges of addresses and prefixes: those of our own tables, where Network is a name and a prefix stands beside it, and plain ones. */
export const addressCellsRule: CellsRule = {
  headings: ["Address", "Addresses", "Prefix", "Prefixes", "Taken", "Reserved", "Shared address", "In use"],
  otherwise: ["Network", "Networks", "Subnet", "Subnets"],
  passes: [
    "Name", "Need", "Hosts", "First host", "Last host", "Array", "Controller", "Port", "Mask", "Gateway", "Times", "Rows",
    "Site", "Role", "Side", "VLAN", "MTU", "Device", "Host", "Cluster", "Switch", "Switch port",
  ],
};

const eachAddressCell = eachCell(addressCellsRule);

/** Reads a text that must be given; a number is taken as its text. */
export function text(example: string): Reader<string> {
  return written(example, (given) => given);
}

/** Reads a text; null where it is blank. */
export const textOrNone: Reader<string | null> = { read: textOf };

/** Reads an address and its length: any address of the subnet will do. */
export const subnet = (example: string): Reader<Interface> => written(example, parseInterface);

/** Reads the subnet of an address and its length, to be answered as text. */
export const subnetText = (example: string): Reader<SubnetText> => written(example, readSubnet);

/** Reads a prefix without set host bits. */
export const prefix = (example: string): Reader<Prefix> => written(example, parsePrefix);

/** Reads one address. */
export const address = (example: string): Reader<Address> => written(example, parseAddress);

/** Reads the length of an IPv4 mask: a number such as 24, "/24", or a prefix whose length it is. Refuses IPv6, which has no such `thing`. */
export function maskLength(thing: string): Reader<number> {
  return written("192.0.2.0/26 or 26", (given, place) => {
    if (/^\/?\d{1,3}$/.test(given)) return parseLength(given, 4, place);
    const { address: one, length } = parseInterface(given, place);
    if (one.family === 6) throw invalid(place, given, `${place} ${quote(given)} is IPv6, which has no ${thing}. Give an IPv4 prefix.`);
    return length;
  });
}

/** Reads a prefix length, a number such as 26 or "/26", of the family that another argument is of. */
export function prefixLength(example: string): Reader<(family: Family) => number> {
  return written(example, (given, place) => (family) => parseLength(given, family, place));
}

function parseLength(given: string, family: Family, place: string): number {
  const length = Number(/^\/?(\d{1,3})$/.exec(given)?.[1] ?? -1);
  if (length >= 0 && length <= bitsOf(family)) return length;
  throw invalid(place, given, `${place} ${quote(given)} is not a prefix length. Write a whole number from 0 to ${bitsOf(family)}, such as ${family === 4 ? 26 : 64}.`);
}

/** Reads an address, a range of addresses or a prefix, of the family that another argument is of. */
export function block(example: string): Reader<(family: Family) => Block> {
  return written(example, (given, place) => {
    const found = parseBlock(given, place);
    return (family) => {
      refuseOtherFamily(family, found.first.family, given, place);
      return found;
    };
  });
}

/**
 * Reads every cell of a range as addresses, a–b ranges or prefixes, several a cell with commas between, of the family that another
 * argument is of; where that is null the first cell decides. A blank argument is no ranges at all.
 */
export const ranges: Reader<(family: Family | null) => RangeList> = {
  range: true,
  read: (received, argument) => (family) => {
    let list = family === null ? null : new RangeList(family);
    eachText(received, argument, (given, _, at) => {
      list ??= new RangeList(familyLike(given));
      if (!list.addText(given)) addBlocks(list, given, at());
    });
    return list ?? new RangeList(family ?? 4);
  },
};

/** Does as `ranges`, for functions that list prefixes again: more rows than this would keep the sheet waiting. */
export const listedRanges = atMost(200_000, ranges);

/** Prefixes of one family in columns, and the row each was found in. */
export interface PrefixRows {
  readonly ranges: RangeList;
  readonly rows: readonly number[];
  readonly texts: readonly string[];
}

/** Reads every cell of a range as one prefix or address without set host bits, all of the family of the first. */
export const prefixRows: Reader<PrefixRows> = {
  range: true,
  read: (received, argument) => {
    const rows: number[] = [];
    const texts: string[] = [];
    let list = null as RangeList | null;
    eachText(received, argument, (given, row, at) => {
      list ??= new RangeList(familyLike(given));
      if (!list.addText(given)) {
        const place = at();
        const found = parsePrefix(given, place);
        refuseOtherFamily(list.family, found.family, given, place);
        list.addPrefix(found);
      }
      rows.push(row);
      texts.push(given);
    });
    return { ranges: list ?? new RangeList(4), rows, texts };
  },
};

/** Tells which family a text is about; what is in neither is found out when it is read. */
function familyLike(given: string): Family {
  return given.includes(":") ? 6 : 4;
}

/** Visits the text of every cell that holds something, row by row. */
function eachText(received: unknown, argument: string, visit: (text: string, row: number, at: () => string) => void): void {
  eachAddressCell(received, argument, (cell, row, at) => {
    // An error cell begins with #, and is named by where it stands.
    const given = typeof cell === "string" && cell.charCodeAt(0) !== 35 ? textOf(cell, argument) : textOf(cell, at());
    if (given !== null) visit(given, row, at);
  });
}

/** Makes a reader out of a parser of text; a blank is told to write something like `example`. */
function written<Value>(example: string, parse: (given: string, place: string) => Value): Reader<Value> {
  return {
    example,
    read: (received, place) => {
      const given = textOf(received, place);
      if (given === null) throw invalid(place, received, `${place} is blank. Write one such as ${example}.`);
      return parse(given, place);
    },
  };
}

/** Reads one value as text; null where it is blank. Text is taken as it is, but for the blanks around it and for errors. */
function textOf(received: unknown, place: string): string | null {
  if (typeof received === "string" && received.charCodeAt(0) !== 35) {
    const trimmed = received.trim();
    return trimmed === "" ? null : trimmed;
  }
  const scalar = readScalar(received, place);
  return scalar === null ? null : String(scalar);
}
