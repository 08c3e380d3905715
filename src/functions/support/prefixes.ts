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
import { readScalar } from "./cells";

/** Texts of a first cell that make its row a header, where a range holds addresses or prefixes. */
const addressHeaders = ["Prefix", "Prefixes", "Network", "Networks", "Subnet", "Subnets", "Address", "Addresses", "Taken", "Reserved"];

/** Reads a required text argument; a number is taken as its text. */
export function readText(received: unknown, argument: string, example: string): string {
  const text = textOf(received, argument);
  if (text === null) throw invalid(argument, received, `${argument} is blank. Write one such as ${example}.`);
  return text;
}

/** Reads an optional text argument; null where it is blank. */
export function readTextOrNone(received: unknown, argument: string): string | null {
  return textOf(received, argument);
}

/** Reads an address and its length: any address of the subnet will do. */
export function readInterface(received: unknown, argument: string): Interface {
  return parseInterface(readText(received, argument, "10.20.0.0/24"), argument);
}

/** Reads the subnet of an address and its length, to be answered as text. */
export function readSubnetText(received: unknown, argument: string): SubnetText {
  return readSubnet(readText(received, argument, "10.20.0.0/24"), argument);
}

/** Reads a prefix without set host bits. */
export function readPrefix(received: unknown, argument: string): Prefix {
  return parsePrefix(readText(received, argument, "10.20.0.0/24"), argument);
}

/** Reads one address. */
export function readAddress(received: unknown, argument: string): Address {
  return parseAddress(readText(received, argument, "10.20.0.9"), argument);
}

/** Reads the length of an IPv4 mask: a number such as 24, "/24", or a prefix whose length it is. Refuses IPv6 and says why. */
export function readMaskLength(received: unknown, argument: string, what: string): number {
  const text = readText(received, argument, "10.20.0.0/24 or 24");
  if (/^\/?\d{1,3}$/.test(text)) return parseLength(text, 4, argument);
  const { address, length } = parseInterface(text, argument);
  if (address.family === 6) throw invalid(argument, received, `${argument} ${quote(text)} is IPv6, which has no ${what}. Give an IPv4 prefix.`);
  return length;
}

/** Reads a prefix length of `family`: a number such as 26, or "/26". */
export function readLength(received: unknown, argument: string, family: Family): number {
  return parseLength(readText(received, argument, "26"), family, argument);
}

function parseLength(text: string, family: Family, argument: string): number {
  const length = Number(/^\/?(\d{1,3})$/.exec(text)?.[1] ?? -1);
  if (length >= 0 && length <= bitsOf(family)) return length;
  throw invalid(argument, text, `${argument} ${quote(text)} is not a prefix length. Write a whole number from 0 to ${bitsOf(family)}, such as ${family === 4 ? 26 : 64}.`);
}

/** Reads an address, a range of addresses or a prefix of `family`. */
export function readBlock(received: unknown, argument: string, family: Family): Block {
  const text = readText(received, argument, "10.20.0.9 or 10.20.0.0/24");
  const block = parseBlock(text, argument);
  refuseOtherFamily(family, block.first.family, text, argument);
  return block;
}

/**
 * Reads every cell of a range as addresses, a–b ranges or prefixes of `family`, several a cell with commas between.
 *
 * A blank argument is no ranges at all. Where `family` is null the first cell decides. Rows count from the first of the range.
 */
export function readRanges(received: unknown, argument: string, family: Family | null): RangeList {
  let list = family === null ? null : new RangeList(family);
  eachText(received, argument, addressHeaders, (text, row) => {
    list ??= new RangeList(familyLike(text));
    if (!list.addText(text)) addBlocks(list, text, `${argument} row ${row}`);
  });
  return list ?? new RangeList(family ?? 4);
}

/** Prefixes of one family in columns, and the row each was found in. */
export interface PrefixRows {
  readonly ranges: RangeList;
  readonly rows: readonly number[];
  readonly texts: readonly string[];
}

/** Reads every cell of a range as one prefix or address without set host bits, all of the family of the first. */
export function readPrefixRows(received: unknown, argument: string): PrefixRows {
  const rows: number[] = [];
  const texts: string[] = [];
  let ranges: RangeList | null = null;
  eachText(received, argument, addressHeaders, (text, row) => {
    ranges ??= new RangeList(familyLike(text));
    if (!ranges.addText(text)) {
      const place = `${argument} row ${row}`;
      const prefix = parsePrefix(text, place);
      refuseOtherFamily(ranges.family, prefix.family, text, place);
      ranges.addPrefix(prefix);
    }
    rows.push(row);
    texts.push(text);
  });
  return { ranges: ranges ?? new RangeList(4), rows, texts };
}

/** Tells which family a text is about; what is in neither is found out when it is read. */
function familyLike(text: string): Family {
  return text.includes(":") ? 6 : 4;
}

/** Visits the text of every cell that holds something, row by row; a header in the first row is left out. */
export function eachText(received: unknown, argument: string, headers: readonly string[], visit: (text: string, row: number) => void): void {
  eachRow(received, argument, headers, (cells, row) => {
    for (const cell of cells) {
      const text = rowText(cell, argument, row);
      if (text !== null) visit(text, row);
    }
  });
}

/**
 * Visits every row that holds something, as received, and its number, counted from the first row of the range.
 *
 * The quick way through a hundred thousand rows: nothing is copied. A first row whose first text is one of `headers` is left out.
 */
export function eachRow(received: unknown, argument: string, headers: readonly string[], visit: (cells: readonly unknown[], row: number) => void): void {
  const grid: readonly unknown[] = Array.isArray(received) ? received : [[received]];
  let begun = false;
  for (let index = 0; index < grid.length; index++) {
    const line = grid[index];
    const cells: readonly unknown[] = Array.isArray(line) ? line : [line];
    if (isBlank(cells)) continue;
    if (begun || !isHeader(cells, argument, index + 1, headers)) visit(cells, index + 1);
    begun = true;
  }
}

function isHeader(cells: readonly unknown[], argument: string, row: number, headers: readonly string[]): boolean {
  const first = cells.map((cell) => rowText(cell, argument, row)).find((text) => text !== null);
  return typeof first === "string" && headers.some((header) => header.toLowerCase() === first.toLowerCase());
}

function isBlank(cells: readonly unknown[]): boolean {
  return cells.every((cell) => cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === ""));
}

/** Reads one cell of a row as text; null where it is blank. Refuses an error cell and names its row. */
export function rowText(cell: unknown, argument: string, row: number): string | null {
  return typeof cell === "string" && cell.charCodeAt(0) !== 35 ? textOf(cell, argument) : textOf(cell, `${argument} row ${row}`);
}

/** Reads one value as text; null where it is blank. Text is taken as it is, but for the blanks around it and for errors. */
function textOf(received: unknown, argument: string): string | null {
  if (typeof received === "string" && received.charCodeAt(0) !== 35) {
    const text = received.trim();
    return text === "" ? null : text;
  }
  const scalar = readScalar(received, argument);
  return scalar === null ? null : String(scalar);
}
