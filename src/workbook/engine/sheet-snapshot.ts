import type { ICellData, IWorksheetData } from "@univerjs/core";
import type { CellValue, SheetSnapshot } from "../../sheet";
import { blankRow } from "../document/document-snapshot";
import { cellKind, yes } from "./engine-values";
import { eachCell, extrasOf, type Spill } from "./stored-sheet";

/** What can be asked of a sheet beyond its stored data. */
export interface SheetReading {
  /** Formula of a cell that has one, else null; by default what the cell itself stores. */
  readonly formulaAt?: (row: number, column: number, cell: ICellData) => string | null;
  readonly spills?: readonly Spill[];
  /** How many notes are on the sheet. */
  readonly notes?: number;
  /** How many rows to read at most: none to read only what the sheet is. */
  readonly rows?: number;
}

/** Reads a stored sheet as a snapshot, from A1 to the last cell that shows something, spilled cells included. */
export function sheetSnapshot(sheet: Partial<IWorksheetData>, { formulaAt = ownFormula, spills = [], notes = 0, rows = Infinity }: SheetReading = {}): SheetSnapshot {
  const extras = extrasOf(sheet);
  const values: CellValue[][] = [];
  const formulas: (string | null)[][] = [];
  if (rows > 0) {
    eachCell(sheet, (cell, row, column) => {
      if (row >= rows) return;
      const formula = formulaAt(row, column, cell);
      const value = cellValue(cell, formula !== null);
      if (value === null && formula === null) return;
      put(values, row, column, value);
      put(formulas, row, column, formula);
    });
    for (const { area, values: spilled } of spills) {
      spilled.slice(0, Math.max(0, rows - area.row)).forEach((line, row) => line.forEach((value, column) => put(values, area.row + row, area.column + column, value)));
    }
    square(values, formulas);
  }
  return {
    name: sheet.name ?? "",
    visible: sheet.hidden !== yes,
    protected: extras.protection !== undefined,
    values,
    formulas,
    tables: extras.tables ?? [],
    attachments: notes + (extras.drawings ?? 0),
  };
}

const errorTexts = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#SPILL!", "#CALC!", "#CYCLE!", "#ERROR!", "#GETTING_DATA", "#CONNECT!"]);

/** Reads what a cell holds. Only what a formula answers can be an error; text that looks like one stays text. */
export function cellValue(cell: ICellData, computed: boolean): CellValue {
  const { v, t, p } = cell;
  if (p?.body !== undefined) return p.body.dataStream.replace(/\r\n$/, "").replace(/\r/g, "\n");
  if (v === null || v === undefined || v === "") return null;
  if (t === cellKind.boolean) return v === 1 || v === true || v === "1";
  if (t === cellKind.number) return Number(v);
  if (typeof v === "string" && errorTexts.has(v) && (computed || isErrorLiteral(cell))) return { error: v };
  return v;
}

/** Tells whether a cell holds an error as such, without a formula: files may. */
function isErrorLiteral({ custom }: ICellData): boolean {
  return (custom as { errorValue?: boolean } | null | undefined)?.errorValue === true;
}

function ownFormula(_row: number, _column: number, { f }: ICellData): string | null {
  return f === undefined || f === null || f === "" ? null : f;
}

function put<T>(grid: T[][], row: number, column: number, value: T): void {
  (grid[row] ??= [])[column] = value;
}

// Both grids get the same full rectangle: no holes, null where there is nothing. Rows in which nothing stands are one and the same: a cell in the
// last row of a sheet costs no million of them.
function square(values: CellValue[][], formulas: (string | null)[][]): void {
  const rows = Math.max(values.length, formulas.length);
  let columns = 0;
  values.forEach((line) => (columns = Math.max(columns, line.length)));
  const blank = blankRow(rows, columns);
  for (let row = 0; row < rows; row += 1) {
    values[row] = filled(values[row], columns, blank);
    formulas[row] = filled(formulas[row], columns, blank);
  }
}

function filled<T>(line: (T | null)[] | undefined, columns: number, blank: null[]): (T | null)[] {
  if (line === undefined) return blank;
  for (let column = 0; column < columns; column += 1) line[column] ??= null;
  return line;
}
