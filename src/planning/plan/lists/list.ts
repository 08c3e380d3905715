import { columnLetters, isBlank, showCell, type CellValue } from "../../../sheet";
import { foldName, invalid } from "../../text";

/** One row of a list, and where it stood in it, counted from 1. */
export interface ListRow {
  readonly number: number;
  readonly cells: readonly CellValue[];
}

/** A list as a firm keeps it: columns under headers. */
export interface List {
  /** Headers, each of its own: a second one of a name has a number behind it, a blank one the letters of its column. */
  readonly headers: readonly string[];
  readonly rows: readonly ListRow[];
  /** Rows that look like totals, which are no rows of the list. */
  readonly leftOut: readonly ListRow[];
}

/** Rows in which headers are looked for: titles and notes stand above them. */
const searchedRows = 30;

/** Most columns of a list. */
const mostColumns = 300;

/** Words with which a row of totals begins, in the languages of its makers. */
const totals = /^(?:(?:grand |sub)?totals?|sum|summe|gesamt|total général|totale|totaal|suma)\b/i;

/**
 * Finds the headers and the rows of a list among cells: the headers stand in the first row that is mostly filled with different texts.
 *
 * Blank rows are passed over, and a last row that begins as totals do is left out. Refuses cells in which no headers stand.
 */
export function readList(cells: readonly (readonly CellValue[])[]): List {
  const filled = cells.map((line) => line.filter((cell) => !isBlank(cell)).length);
  const widest = Math.max(0, ...filled);
  if (widest > mostColumns) throw invalid("list", widest, `The list has ${widest} columns; ${mostColumns} is the most. Leave out what is not needed.`);
  const searched = cells.slice(0, searchedRows);
  const firstFilled = (share: number) => searched.findIndex((line, row) => filled[row]! >= Math.min(2, widest) && filled[row]! >= share * widest && isHeader(line));
  const full = firstFilled(0.6);
  const at = full < 0 ? firstFilled(0.5) : full;
  if (at < 0 || widest === 0) throw invalid("list", null, "No row of headers was found in the list. Write one above it, a different text over each column.");
  const width = cells.reduce((most, line) => Math.max(most, line.length), 0);
  const rows = cells.flatMap((line, row): ListRow[] => (row > at && filled[row]! > 0 ? [{ number: row + 1, cells: line }] : []));
  const last = rows.at(-1);
  const endsInTotals = last !== undefined && rows.length > 1 && totals.test(showCell(last.cells.find((cell) => !isBlank(cell))).trim());
  return { headers: headersOf(cells[at]!, width), rows: endsInTotals ? rows.slice(0, -1) : rows, leftOut: endsInTotals ? [last] : [] };
}

function isHeader(line: readonly CellValue[]): boolean {
  return line.every((cell) => isBlank(cell) || (typeof cell === "string" && !/^[\d.,\s]+$/.test(cell)));
}

function headersOf(line: readonly CellValue[], width: number): string[] {
  const taken = new Set<string>();
  return Array.from({ length: width }, (_, column) => {
    const shown = showCell(line[column]).replace(/\s+/g, " ").trim() || `column ${columnLetters(column)}`;
    let [header, number] = [shown, 2];
    while (taken.has(foldName(header))) header = `${shown} (${number++})`;
    taken.add(foldName(header));
    return header;
  });
}
