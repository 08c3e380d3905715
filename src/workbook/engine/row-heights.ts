import type { IRange, IRowData, IWorksheetData, Nullable, Worksheet } from "@univerjs/core";
import { no, wrap, yes } from "./engine-values";
import { eachCell, findStyle, type StyleTable } from "./stored-sheet";

/** Pixels of a row with one line, as the engine draws it. */
const oneLine = 24;
const standardFontSize = 11;
const standardColumnWidth = 88;

/**
 * Gives rows with wrapped text a height in which it can be read, where they have none.
 *
 * The engine measures rows only when they are edited, and measuring a whole workbook would hold the page up. The estimate counts the
 * lines that words of average width take; a row that is edited is measured exactly.
 */
export function estimateRowHeights(sheet: Partial<IWorksheetData>, styles: StyleTable): void {
  const rowData = (sheet.rowData ??= {});
  const heights = new Map<number, number>();
  const merges = new Map<number, IRange[]>();
  for (const merge of sheet.mergeData ?? []) {
    // The text of a merged area stands in its first row.
    const inRow = merges.get(merge.startRow);
    if (inRow === undefined) merges.set(merge.startRow, [merge]);
    else inRow.push(merge);
  }
  eachCell(sheet, ({ v: text, s }, row, column) => {
    if (typeof text !== "string" || rowData[row]?.h !== undefined) return;
    const style = findStyle(styles, s);
    if (style?.tb !== wrap) return;
    const points = style.fs ?? standardFontSize;
    const width = widthOf(sheet, merges.get(row) ?? [], column) - 6;
    const lines = countLines(text, width / (points * 0.67));
    if (lines > 1) heights.set(row, Math.max(heights.get(row) ?? oneLine, Math.ceil(lines * points * 1.7) + 6));
  });
  for (const [row, height] of heights) if (height > oneLine) rowData[row] = { ...rowData[row], h: height, ia: yes };
}

/**
 * Lets a row be shown higher than it was given; the engine shows one with a height of its own just so.
 *
 * The row is marked, as from then on its height looks like one that the engine found: what was given is what a saved file has, and the least that is shown.
 */
export function letGrow(row: IRowData): void {
  if (row.ia !== no || row.h === undefined) return;
  row.ia = yes;
  row.ah = row.h;
  row.custom = { ...row.custom, isGiven: true };
}

/**
 * The height of a row that a file or a person gave, in pixels; undefined where the row finds its own. `standard` is the height of rows that say nothing: the
 * engine forgets a given height that is no other.
 */
export function givenHeight({ h, ia, custom }: IRowData, standard: number | undefined): number | undefined {
  if (ia === yes && custom?.["isGiven"] !== true) return undefined;
  return h ?? (ia === no ? standard : undefined);
}

/** Lets a row find its height alone. */
export function forgetGivenHeight(row: Nullable<Partial<IRowData>>): void {
  if (row?.custom) row.custom = { ...row.custom, isGiven: undefined };
}

/** The least height of a row on the screen, in pixels. */
export function leastHeight(sheet: Worksheet, row: number): number {
  const { defaultRowHeight } = sheet.getConfig();
  return givenHeight(sheet.getRowManager().getRow(row) ?? {}, defaultRowHeight) ?? defaultRowHeight;
}

/** Width in pixels that a cell's text has: its column's, or all columns of its merged area. */
function widthOf({ columnData = {}, defaultColumnWidth = standardColumnWidth }: Partial<IWorksheetData>, merges: readonly IRange[], column: number): number {
  const merged = merges.find(({ startColumn, endColumn }) => column >= startColumn && column <= endColumn);
  let width = 0;
  for (let across = merged?.startColumn ?? column; across <= (merged?.endColumn ?? column); across += 1) width += columnData[across]?.w ?? defaultColumnWidth;
  return width;
}

/** Counts the lines of a text whose lines hold so many characters, broken between words. */
export function countLines(text: string, characters: number): number {
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      if (used > 0 && used + 1 + word.length > characters) {
        lines += 1;
        used = 0;
      }
      used += word.length + (used > 0 ? 1 : 0);
      // A word that is longer than a line is broken inside.
      for (; used > characters && characters >= 1; used -= characters) lines += 1;
    }
  }
  return lines;
}
