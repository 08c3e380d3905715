import { mostDrives, parseScheme, type PoolMember, type Scheme } from "../../planning/capacity";
import { invalid, quote } from "../../planning/text";
import { parseNumber, parseSize, parseSizeOrZero, type Bytes } from "../../planning/quantity";
import { readRows, readScalar, type Scalar } from "./cells";
import { readName } from "./names";

/** Reads a range of schemes, in its own order; null where it is blank throughout. A bad one is named by its row. */
export function readSchemes(received: unknown, argument: string): Scheme[] | null {
  const rows = readRows(received, argument, ["scheme", "schemes"]);
  if (rows.length === 0) return null;
  return rows.flatMap(({ row, cells }) => cells.filter((cell) => cell !== null).map((cell) => parseScheme(cell, `${argument} row ${row}`)));
}

/** Reads the size of every drive from a range, row by row; empty rows are skipped, a blank within a row is refused. */
export function readDriveSizes(received: unknown, argument: string): Bytes[] {
  const rows = readRows(received, argument, ["size", "sizes", "drive", "drives", "drive size", "drive sizes", "capacity", "tb", "size tb", "size (tb)", "drive size tb"]);
  const sizes = rows.flatMap(({ row, cells }) => cells.map((cell) => parseSize(cell, `${argument} row ${row}`)));
  if (sizes.length === 0) throw invalid(argument, null, `${argument} is blank. Give a range with the size of every drive, such as 4 or "960 GB".`);
  if (sizes.length > mostDrives) throw invalid(argument, sizes.length, `${argument} holds ${sizes.length} drives. Give at most ${mostDrives}.`);
  return sizes;
}

/** Reads the arrays of a pool: name, usable and used, a row each. Used may be 0; it is never more than usable. */
export function readPoolMembers(received: unknown, argument: string): PoolMember[] {
  const rows = readRows(received, argument, ["name", "array", "arrays", "member", "members"]);
  if (rows.length === 0) throw invalid(argument, null, `${argument} is blank. Give a range of array name, usable and used.`);
  return rows.map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    const [name = null, usableCell = null, usedCell = null] = cells;
    const usable = parseSize(usableCell, `${at} usable`);
    const used = parseSizeOrZero(usedCell, `${at} used`);
    if (used > usable) throw invalid(argument, usedCell, `${at} used ${quote(usedCell)} is more than its usable ${quote(usableCell)}. Write what is used of it.`);
    return { name: readName(name, `${at} name`), usable, used };
  });
}

const yearRule = { min: 0, max: 100, example: 3 } as const;

/**
 * Answers a number of years, or each of a range of them.
 *
 * A range is answered cell by cell in its own shape, so that every answer stands beside its year: empty rows stay empty, a header row
 * is answered by `header`, and a blank within a row is refused.
 */
export function answerYears(received: unknown, argument: string, header: string, at: (years: number) => number): number | unknown[][] {
  if (!isRange(received)) return at(parseNumber(readScalar(received, argument), argument, yearRule));
  const rows = readRows(received, argument, ["year", "years"]);
  const headed = readRows(received, argument, []).length > rows.length;
  if (rows.length === 0) throw invalid(argument, null, `${argument} is blank. Write a number of years, such as 3, or a range of them.`);
  const byRow = new Map(rows.map(({ row, cells }) => [row, cells]));
  const firstRow = rows[0]!.row;
  return received.map((line, index) => {
    const row = index + 1;
    const cells: readonly Scalar[] | undefined = byRow.get(row);
    if (cells !== undefined) return cells.map((cell) => at(parseNumber(cell, `${argument} row ${row}`, yearRule)));
    const blank = headed && row < firstRow && line.some((cell) => readScalar(cell, argument) !== null) ? header : "";
    return line.map(() => blank);
  });
}

function isRange(received: unknown): received is unknown[][] {
  return Array.isArray(received) && (received.length > 1 || (Array.isArray(received[0]) && received[0].length > 1));
}
