import { sheetSize, type Area, type CellPlace } from "./area";
import { columnLetters, columnNumber } from "./column-letters";

/** Writes the address of a cell: row 3, column 1 is B4. */
export function cellAddress({ row, column }: CellPlace): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** Writes the address of an area, such as B3:C9, or B3 where it is one cell. */
export function areaAddress({ row, column, rows, columns }: Area): string {
  const first = cellAddress({ row, column });
  return rows === 1 && columns === 1 ? first : `${first}:${cellAddress({ row: row + rows - 1, column: column + columns - 1 })}`;
}

/** Reads the address of one cell as `cellAddress` writes it; null where it is none. */
export function parseCell(text: string): CellPlace | null {
  // By hand, as files name each of their cells so: a pattern takes three times as long.
  let at = 0;
  let column = 0;
  for (; at < 3 && isBetween(text, at, "A", "Z"); at += 1) column = column * 26 + text.charCodeAt(at) - 64;
  if (at === 0 || !isBetween(text, at, "1", "9")) return null;
  let row = 0;
  for (; isBetween(text, at, "0", "9"); at += 1) row = row * 10 + text.charCodeAt(at) - 48;
  return at < text.length || row > sheetSize.rows || column > sheetSize.columns ? null : { row: row - 1, column: column - 1 };
}

function isBetween(text: string, at: number, first: string, last: string): boolean {
  return text.charCodeAt(at) >= first.charCodeAt(0) && text.charCodeAt(at) <= last.charCodeAt(0);
}

/**
 * Reads areas divided by blanks, such as "A1:B5 D1", whole columns (B:C) and rows (2:3) too.
 *
 * Dollar signs are passed over, and so is every part that is no area of a sheet.
 */
export function parseAreas(text: string): Area[] {
  return text
    .replaceAll("$", "")
    .split(/\s+/)
    .flatMap((part) => {
      const match = /^([A-Z]*)(\d*)(?::([A-Z]*)(\d*))?$/i.exec(part);
      if (match === null || part === "") return [];
      const [, letters = "", digits = "", lastLetters = letters, lastDigits = digits] = match;
      const columns = span(letters, lastLetters, columnNumber, sheetSize.columns);
      const rows = span(digits, lastDigits, rowNumber, sheetSize.rows);
      return columns === null || rows === null ? [] : [{ row: rows.first, column: columns.first, rows: rows.count, columns: columns.count }];
    });
}

/** Counts from the first to the last, whichever way round they are written; all where neither is written. */
function span(first: string, last: string, read: (text: string) => number | null, all: number): { readonly first: number; readonly count: number } | null {
  const [one, other] = [first === "" ? 0 : read(first), last === "" ? all - 1 : read(last)];
  return one === null || other === null ? null : { first: Math.min(one, other), count: Math.abs(other - one) + 1 };
}

function rowNumber(digits: string): number | null {
  const number = Number(digits);
  return number >= 1 && number <= sheetSize.rows ? number - 1 : null;
}
