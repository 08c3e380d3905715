import type { IRange } from "@univerjs/core";

/** Writes a cell's address, such as B3; row and column count from 0. */
export function cellAddress(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** Writes an area's address, such as B3:C9, or B3 where it is one cell. */
export function areaAddress({ startRow, startColumn, endRow, endColumn }: IRange): string {
  const first = cellAddress(startRow, startColumn);
  return startRow === endRow && startColumn === endColumn ? first : `${first}:${cellAddress(endRow, endColumn)}`;
}

/** Reads areas divided by blanks, such as "A1:B5 D1", whole columns and rows too; what is none is passed over. */
export function parseAreas(text: string): IRange[] {
  return text
    .replaceAll("$", "")
    .split(/\s+/)
    .flatMap((part) => {
      const match = /^([A-Z]{0,3})(\d*)(?::([A-Z]{0,3})(\d*))?$/i.exec(part);
      if (part === "" || match === null) return [];
      const [, letters = "", digits = "", lastLetters = letters, lastDigits = digits] = match;
      return [
        {
          startRow: digits === "" ? 0 : Number(digits) - 1,
          startColumn: letters === "" ? 0 : columnNumber(letters),
          endRow: lastDigits === "" ? 1_048_575 : Number(lastDigits) - 1,
          endColumn: lastLetters === "" ? 16_383 : columnNumber(lastLetters),
        },
      ];
    });
}

function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}
