import { isBlank, readScalar } from "./scalar";

/**
 * Visits every row of a range that holds something, as received, and its number, counted from the first row of the range.
 *
 * The one reader of rows, quick enough for a hundred thousand: nothing is copied. A single value counts as a range of one cell. The first
 * row that holds something is taken for a header, and left out, when its first text is one of `headers` (compared without case) and no cell
 * of it is a number: a device may well be called Switch, and must not be left out of a total.
 */
export function eachRow(received: unknown, argument: string, headers: readonly string[], visit: (cells: readonly unknown[], row: number) => void): void {
  const grid: readonly unknown[] = Array.isArray(received) ? received : [[received]];
  let begun = false;
  for (let index = 0; index < grid.length; index++) {
    const line = grid[index];
    const cells: readonly unknown[] = Array.isArray(line) ? line : [line];
    if (cells.every(isBlank)) continue;
    if (begun || !isHeader(cells, rowPlace(argument, index + 1), headers)) visit(cells, index + 1);
    begun = true;
  }
}

/** Says where a row stands, as sentences do: `needs row 2`. */
export function rowPlace(argument: string, row: number): string {
  return `${argument} row ${row}`;
}

function isHeader(cells: readonly unknown[], place: string, headers: readonly string[]): boolean {
  const scalars = cells.map((cell) => readScalar(cell, place));
  const first = scalars.find((scalar) => scalar !== null);
  if (typeof first !== "string" || scalars.some((scalar) => typeof scalar === "number")) return false;
  return headers.some((header) => header.toLowerCase() === first.toLowerCase());
}
