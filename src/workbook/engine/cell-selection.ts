import { RANGE_TYPE, type IRange } from "@univerjs/core";

/**
 * Makes what the engine keeps of a selected range: beside the range its first cell, which is typed into.
 *
 * A range that says of itself no other kind is one of cells: the engine freezes nothing where no kind is said.
 */
export function selectionOf(range: IRange) {
  const { startRow, startColumn } = range;
  const primary = { startRow, startColumn, endRow: startRow, endColumn: startColumn, actualRow: startRow, actualColumn: startColumn, isMerged: false, isMergedMainCell: false };
  return { range: { rangeType: RANGE_TYPE.NORMAL, ...range }, primary, style: null };
}

/** Makes the selection of one cell; rows and columns count from 0. */
export function selectionOfCell(row: number, column: number) {
  return selectionOf({ startRow: row, startColumn: column, endRow: row, endColumn: column });
}
