import type { CellPlace, SheetSnapshot } from "../../sheet";

/** Tells whether a cell holds neither a value nor a formula. */
export function isBlankCell(sheet: SheetSnapshot, { row, column }: CellPlace): boolean {
  const value = sheet.values[row]?.[column] ?? null;
  return (value === null || value === "") && (sheet.formulas[row]?.[column] ?? null) === null;
}
