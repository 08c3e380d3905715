import type { IRange } from "@univerjs/core";

/** Makes what the engine keeps of a selected range: beside the range its first cell, which is typed into. */
export function selectionOf(range: IRange) {
  const { startRow, startColumn } = range;
  const primary = { startRow, startColumn, endRow: startRow, endColumn: startColumn, actualRow: startRow, actualColumn: startColumn, isMerged: false, isMergedMainCell: false };
  return { range, primary, style: null };
}

/** Makes the selection of one cell; rows and columns count from 0. */
export function selectionOfCell(row: number, column: number) {
  return selectionOf({ startRow: row, startColumn: column, endRow: row, endColumn: column });
}
