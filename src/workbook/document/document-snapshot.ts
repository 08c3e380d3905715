import type { CellValue, SheetSnapshot, WorkbookSnapshot } from "../../sheet";
import { readChosen, type SheetChoice } from "../sheet-choice";
import type { CellGrid, DocumentSheet, WorkbookDocument } from "./workbook-document";

/** Reads a document as a snapshot, with the results that the file carries. */
export function documentSnapshot({ sheets }: WorkbookDocument): WorkbookSnapshot {
  return { sheets: sheets.map((sheet) => sheetSnapshot(sheet)) };
}

/**
 * Makes a reader of documents that change little by little: a sheet whose cells are still those of the reading before is answered with the very
 * rows of then, so that reading it again, and comparing the two, costs nothing.
 */
export function snapshotReader(): (document: WorkbookDocument, choice?: SheetChoice) => WorkbookSnapshot {
  let before: ReadonlyMap<CellGrid, SheetSnapshot> = new Map();
  return ({ sheets }, choice) => {
    const read = new Map<CellGrid, SheetSnapshot>();
    const whole = (sheet: DocumentSheet): SheetSnapshot => {
      const known = before.get(sheet.cells);
      const snapshot = known === undefined ? sheetSnapshot(sheet) : { ...sheetSnapshot(sheet, 0), values: known.values, formulas: known.formulas };
      read.set(sheet.cells, snapshot);
      return snapshot;
    };
    const answer = sheets.map((sheet) => {
      const facts = { name: sheet.name, visible: sheet.state === "visible", hasTables: sheet.tables.length > 0 };
      return readChosen(choice, facts, (rows) => (rows === Infinity ? whole(sheet) : sheetSnapshot(sheet, rows)));
    });
    before = read;
    return { sheets: answer };
  };
}

/** Cells up to which a snapshot is a full rectangle. */
const mostCells = 20_000_000;

/**
 * Makes the row that stands for all in which nothing stands: as wide as the sheet, but for a sheet with cells so far apart that nobody could look at
 * all between them. There it has none.
 */
export function blankRow(rows: number, columns: number): null[] {
  return rows * columns > mostCells ? [] : new Array<null>(columns).fill(null);
}

/** Reads a sheet as a snapshot, or no more than its first rows. */
export function sheetSnapshot(sheet: DocumentSheet, mostRows = Infinity): SheetSnapshot {
  let [rows, columns] = [0, 0];
  for (const [row, line] of mostRows > 0 ? sheet.cells : []) {
    if (row >= mostRows) continue;
    line.forEach(({ value, formula }, column) => {
      if (value === null && formula === undefined) return;
      rows = Math.max(rows, row + 1);
      columns = Math.max(columns, column + 1);
    });
  }
  // Rows in which nothing stands are one and the same: a cell in the last row of a sheet costs no million of them.
  const blank = blankRow(rows, columns);
  const values: CellValue[][] = new Array<CellValue[]>(rows).fill(blank);
  const formulas: (string | null)[][] = new Array<(string | null)[]>(rows).fill(blank);
  for (const [row, line] of mostRows > 0 ? sheet.cells : []) {
    if (row >= rows) continue;
    const shown: CellValue[] = new Array<CellValue>(columns).fill(null);
    let written: (string | null)[] = blank;
    line.forEach(({ value, formula }, column) => {
      if (column >= columns) return;
      shown[column] = value;
      if (formula === undefined) return;
      if (written === blank) written = new Array<null>(columns).fill(null);
      written[column] = formula;
    });
    values[row] = shown;
    formulas[row] = written;
  }
  const { name, state, isProtected, tables, notes, drawings } = sheet;
  return { name, visible: state === "visible", protected: isProtected, values, formulas, tables, attachments: notes.length + drawings };
}
