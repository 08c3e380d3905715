import type { CellPlace, Scalar, SheetSnapshot } from "../../sheet";
import { sheetSnapshot } from "./document-snapshot";
import type { SheetCell } from "./out-of-date";
import { cellAt, putCell, type CellGrid, type DocumentCell, type DocumentSheet, type WorkbookDocument } from "./workbook-document";

/** Tells what formulas of a sheet answer, as far as that is known without computing them. */
export type AnswersOf = (sheet: SheetSnapshot) => readonly (CellPlace & { readonly value: Scalar })[];

/** Gives formulas of sheets that are meant the answers that are known of them; names these cells. */
export function answerSheets(
  document: WorkbookDocument,
  answersOf: AnswersOf,
  isMeant: (sheet: DocumentSheet) => boolean,
): { readonly document: WorkbookDocument; readonly cells: readonly SheetCell[] } {
  const answered: SheetCell[] = [];
  const sheets = document.sheets.map((sheet) => {
    if (!isMeant(sheet)) return sheet;
    const given: (SheetCell & { readonly cell: DocumentCell })[] = [];
    for (const { row, column, value } of answersOf(sheetSnapshot(sheet))) {
      const cell = cellAt(sheet.cells, row, column);
      if (cell?.formula !== undefined) given.push({ sheet: sheet.id, row, column, cell: { ...cell, value: value === "" ? null : value, hasResult: true } });
    }
    answered.push(...given);
    return given.length === 0 ? sheet : { ...sheet, cells: withCells(sheet.cells, given) };
  });
  return { document: { ...document, sheets }, cells: answered };
}

/** Takes the results of formulas away. */
export function withoutResults(document: WorkbookDocument, cells: readonly SheetCell[]): WorkbookDocument {
  if (cells.length === 0) return document;
  return {
    ...document,
    sheets: document.sheets.map((sheet) => {
      const own = cells.filter((cell) => cell.sheet === sheet.id);
      const blank = own.map((place) => ({ ...place, cell: { ...cellAt(sheet.cells, place.row, place.column)!, value: null, hasResult: false } }));
      return own.length === 0 ? sheet : { ...sheet, cells: withCells(sheet.cells, blank) };
    }),
  };
}

function withCells(cells: CellGrid, given: readonly (CellPlace & { readonly cell: DocumentCell })[]): CellGrid {
  const changed: CellGrid = new Map(cells);
  for (const { row, column, cell } of given) {
    if (changed.get(row) === cells.get(row)) changed.set(row, new Map(cells.get(row)));
    putCell(changed, row, column, cell);
  }
  return changed;
}
