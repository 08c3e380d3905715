import type { Area } from "../../sheet";

/** The range of an area on a sheet. */
export function rangeOf(sheet: Excel.Worksheet, { row, column, rows, columns }: Area): Excel.Range {
  return sheet.getRangeByIndexes(row, column, rows, columns);
}
