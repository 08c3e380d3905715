import { invalid } from "../../text";
import { isBlank, type Area, type CellValue, type Scalar, type WorkbookSnapshot } from "../../../sheet";
import { hostTableName, type ReadTable } from "../read";
import { columnsOf, type TableKey, type TableRow } from "../schema";

/** One cell to be changed. Rows and columns of the sheet, counted from 0. */
export interface CellWrite {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** What stands there now. */
  readonly before: CellValue;
  readonly value: Scalar;
}

/** A planning table that has to reach further down to hold new rows. */
export interface TableGrowth {
  readonly sheet: string;
  readonly table: string;
  readonly area: Area;
}

/** Changes of a plan as plain data: shown to a person first, then written whole or not at all. */
export interface Changes {
  readonly writes: readonly CellWrite[];
  readonly growths: readonly TableGrowth[];
}

/** Nothing to be changed. */
export const noChanges: Changes = { writes: [], growths: [] };

/** Makes one of several changes. */
export function joinChanges(...some: readonly Changes[]): Changes {
  return { writes: some.flatMap(({ writes }) => writes), growths: some.flatMap(({ growths }) => growths) };
}

/** Changes one cell of a row of a table; null where the table has no such column. */
export function writeCell(workbook: WorkbookSnapshot, table: ReadTable, row: number, column: string, value: Scalar): CellWrite | null {
  const at = table.columns[column];
  return at === undefined ? null : { sheet: table.sheet, row, column: at, before: cellAt(workbook, table.sheet, row, at), value };
}

/**
 * Adds rows to a table, below the last row in which anything stands, the user's own columns included.
 *
 * Columns that the table lacks are left out. Refuses where something else stands below the table in the rows that it would need.
 */
export function appendRows<Key extends TableKey>(workbook: WorkbookSnapshot, table: ReadTable, key: Key, rows: readonly TableRow<Key>[]): Changes {
  return appendValues(workbook, table, key, rows);
}

/** Adds rows whose columns are only known when they are read; see `appendRows`. */
export function appendValues(workbook: WorkbookSnapshot, table: ReadTable, key: TableKey, rows: readonly Readonly<Record<string, Scalar | undefined>>[]): Changes {
  const formulas = new Set(columnsOf(key).flatMap(([name, { kind }]) => (kind === "formula" ? [name] : [])));
  const values = workbook.sheets.find(({ name }) => name === table.sheet)?.values ?? [];
  const typed: number[] = [];
  for (let column = table.firstColumn; column <= table.lastColumn; column += 1) {
    const isFormula = Object.entries(table.columns).some(([name, at]) => at === column && formulas.has(name));
    if (!isFormula) typed.push(column);
  }
  let first = table.lastRow;
  while (first > table.headerRow && typed.every((column) => isBlank(values[first]?.[column]))) first -= 1;
  first += 1;

  const writes: CellWrite[] = [];
  rows.forEach((row, index) => {
    for (const [name, at] of Object.entries(table.columns)) {
      if (at === undefined || formulas.has(name)) continue;
      const before = values[first + index]?.[at] ?? null;
      if (!isBlank(before)) {
        throw invalid(table.name, before, `Table ${table.name} has no room for ${rows.length} rows: something stands below it in row ${first + index + 1}. Move that.`);
      }
      const value = row[name] ?? null;
      if (value !== null) writes.push({ sheet: table.sheet, row: first + index, column: at, before, value });
    }
  });
  const last = first + rows.length - 1;
  const area = { row: table.headerRow, column: table.firstColumn, rows: last - table.headerRow + 1, columns: table.lastColumn - table.firstColumn + 1 };
  return { writes, growths: last > table.lastRow ? [{ sheet: table.sheet, table: hostTableName(key), area }] : [] };
}

function cellAt(workbook: WorkbookSnapshot, sheet: string, row: number, column: number): CellValue {
  return workbook.sheets.find(({ name }) => name === sheet)?.values[row]?.[column] ?? null;
}
