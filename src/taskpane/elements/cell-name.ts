import { columnLetters, type SheetSnapshot } from "../../sheet";

/** Names a cell as the sheet does: row 3, column 1 is B4. */
export function cellName({ row, column }: { readonly row: number; readonly column: number }): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** Tells whether a cell holds neither a value nor a formula. */
export function isBlankCell(sheet: SheetSnapshot, row: number, column: number): boolean {
  const value = sheet.values[row]?.[column] ?? null;
  return (value === null || value === "") && (sheet.formulas[row]?.[column] ?? null) === null;
}
