import { sheetSize } from "./area";

/** Names a column as the sheet does: 0 is A, 26 is AA, 16383 is XFD. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : "") + String.fromCharCode(65 + (column % 26));
}

/** Reads the name of a column in either case: A is 0. Null where it is none, or past the last column of a sheet. */
export function columnNumber(letters: string): number | null {
  if (!/^[A-Z]{1,3}$/i.test(letters)) return null;
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number <= sheetSize.columns ? number - 1 : null;
}
