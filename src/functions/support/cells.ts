import { invalid, quote } from "../../planning/text";

/** What one cell holds, once the wrappings of the host are off. Blank is null: an omitted argument, an empty cell and "" alike. */
export type Scalar = string | number | boolean | null;

/** One row of a range that holds something; `row` counts from 1 at the first row of the range. */
export interface RangeRow {
  readonly row: number;
  readonly cells: readonly Scalar[];
}

/**
 * Takes the wrappings of the host off one argument or cell.
 *
 * A 1×1 range is its cell, an entity is its basic value, text is trimmed. Refuses an error cell, and a range where one cell belongs.
 */
export function readScalar(received: unknown, argument: string): Scalar {
  if (Array.isArray(received)) {
    const first: unknown = received[0];
    if (received.length === 1 && Array.isArray(first) && first.length === 1) return readScalar(first[0], argument);
    throw invalid(argument, received, `${argument} is a range of several cells. Give one cell.`);
  }
  if (received === null || received === undefined) return null;
  if (typeof received === "string") {
    const text = received.trim();
    if (errorText.test(text)) throw errorCell(text, argument);
    return text === "" ? null : text;
  }
  if (typeof received === "number") {
    if (!Number.isFinite(received)) throw errorCell(received, argument);
    return received;
  }
  if (typeof received === "boolean") return received;
  if (typeof received === "object" && "basicValue" in received) return readScalar(received.basicValue, argument);
  throw errorCell(received, argument);
}

/**
 * Reads a range as rows, leaving out those that are wholly empty.
 *
 * A single value counts as a range of one cell. The first row that holds something is taken for a header, and left out, when its first
 * non-blank cell is one of the `headers` (compared without case) and no cell of it is a number. An error cell anywhere refuses the call and is named by its row.
 */
export function readRows(received: unknown, argument: string, headers: readonly string[]): RangeRow[] {
  const rows = allRows(received, argument);
  return rows.length > 0 && isHeader(rows[0]!, headers) ? rows.slice(1) : rows;
}

const errorText = /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|BUSY!|GETTING_DATA|CONNECT!|BLOCKED!|FIELD!|UNKNOWN!)$/;

function errorCell(received: unknown, argument: string): Error {
  const shown = typeof received === "string" ? quote(received) : "an error";
  return invalid(argument, received, `${argument} holds ${shown}. Mend that cell first.`);
}

function allRows(received: unknown, argument: string): RangeRow[] {
  const grid: unknown[][] = Array.isArray(received) ? (received as unknown[][]) : [[received]];
  const rows: RangeRow[] = [];
  grid.forEach((line, index) => {
    const cells = line.map((cell) => readScalar(cell, `${argument} row ${index + 1}`));
    if (cells.some((cell) => cell !== null)) rows.push({ row: index + 1, cells });
  });
  return rows;
}

function isHeader(row: RangeRow, headers: readonly string[]): boolean {
  const first = row.cells.find((cell) => cell !== null);
  // A row with a number in it is no header: a device may well be called Switch, and must not be left out of a total.
  if (typeof first !== "string" || row.cells.some((cell) => typeof cell === "number")) return false;
  return headers.some((header) => header.toLowerCase() === first.toLowerCase());
}
