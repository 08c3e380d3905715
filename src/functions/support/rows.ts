import type { Header, HeaderNames, Rows } from "./header";
import { isBlank } from "../../sheet";

/** Visits one row: its cells as received, its number from the first of the range, and where its columns stand; null: by position. */
export type VisitRow = (cells: readonly unknown[], row: number, places: Header["places"] | null) => void;

/**
 * Visits every row of a range that holds something and is no header.
 *
 * The one reader of rows, quick enough for whole columns: nothing is copied, and what is empty below the last filled row costs nothing.
 */
export function eachRow(received: unknown, argument: string, names: HeaderNames, visit: VisitRow): void {
  const rows = rowsOf(received);
  const header = names.find(rows, argument);
  for (let index = 0; index < rows.length; index++) {
    const cells = rows[index]!;
    if (!cells.every(isBlank) && header?.rows.includes(index) !== true) visit(cells, index + 1, header?.places ?? null);
  }
}

/** Takes a range as rows, down to the last that holds something. A single value counts as a range of one cell. */
export function rowsOf(received: unknown): Rows {
  const grid: readonly unknown[] = Array.isArray(received) ? received : [[received]];
  let last = grid.length - 1;
  while (last >= 0 && isBlankLine(grid[last])) last--;
  const rows = last + 1 < grid.length ? grid.slice(0, last + 1) : grid;
  return rows.every((line) => Array.isArray(line)) ? rows : rows.map((line): readonly unknown[] => (Array.isArray(line) ? line : [line]));
}

function isBlankLine(line: unknown): boolean {
  return Array.isArray(line) ? line.every(isBlank) : isBlank(line);
}

/** Says where a row stands, as sentences do: `needs row 2`. */
export function rowPlace(argument: string, row: number): string {
  return `${argument} row ${row}`;
}

/** Tells whether an argument is more than one cell. */
export function isRange(received: unknown): received is unknown[][] {
  return Array.isArray(received) && (received.length > 1 || (Array.isArray(received[0]) && received[0].length > 1));
}
