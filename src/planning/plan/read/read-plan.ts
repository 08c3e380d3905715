import { foldName, invalid, Problem } from "../../text";
import { isBlank, showCell, type CellValue, type WorkbookSnapshot } from "../../../sheet";
import { columnsOf, isFurther, tableKeys, tables, type Column, type TableKey, type Tables } from "../schema";
import { hostTableName, locateTable } from "./locate-table";
import { blankOf, readCell } from "./read-cell";
import { cellOf, ReadRow, type CellFault, type PlanRow, type Row, type Shown } from "./row";

/** A planning table as it was read. */
export interface ReadTable<Columns extends Record<string, Column> = Record<string, Column>> {
  readonly key: TableKey;
  readonly name: string;
  readonly sheet: string;
  /** Row of the sheet that holds the headers. */
  readonly headerRow: number;
  /** Column of the sheet by column key; a column that is not there is missing here. */
  readonly columns: { readonly [Key in keyof Columns]?: number };
  /** First and last column of the table, the user's own included. */
  readonly firstColumn: number;
  readonly lastColumn: number;
  /** Last row of the table on the sheet, blank rows included. */
  readonly lastRow: number;
  readonly rows: readonly Row<Columns>[];
  readonly faults: readonly CellFault[];
}

/** The planning tables of a workbook by their keys; null where a table is not there. */
export type PlanTables = { readonly [Key in TableKey]: ReadTable<Tables[Key]["columns"]> | null };

/** A planning workbook, read. */
export interface Plan extends PlanTables {
  readonly faults: readonly CellFault[];
}

/**
 * Reads the planning tables of a workbook into typed rows.
 *
 * Tables are found by table name or marker cell, columns by header text in any order and without case; rows that are wholly blank are
 * passed over. Nothing is thrown: a table or column that is missing is missing in the answer, and a cell that cannot be read is blank in
 * its row and stands among the faults.
 */
export function readPlan(workbook: WorkbookSnapshot): Plan {
  const read = tableKeys.map((key) => [key, readTable(workbook, key)] as const);
  const faults = read.flatMap(([, table]) => table?.faults ?? []);
  // Rows are made column by column out of the schema, which their type is made of too: here alone the two are joined.
  return { ...(Object.fromEntries(read) as unknown as PlanTables), faults };
}

/** Tells whether a workbook holds any planning table at all. */
export function isPlan(plan: PlanTables): boolean {
  return tableKeys.some((key) => plan[key] !== null);
}

/** Rows of one table; none where the table is not there. */
export function rowsOf<Key extends TableKey>(plan: PlanTables, key: Key): readonly PlanRow<Key>[] {
  const table: ReadTable<Tables[Key]["columns"]> | null = plan[key];
  return table?.rows ?? [];
}

/** Refuses a plan that lacks a table, or a column of it, that the work at hand cannot do without. */
export function requireTables(plan: PlanTables, needed: readonly TableKey[]): void {
  for (const key of needed) {
    const { name } = tables[key];
    const found: ReadTable | null = plan[key];
    if (found === null) {
      const where = isFurther(key) ? `Choose ${name} under Add a table` : "Choose Set up tables";
      throw invalid(name, null, `The workbook has no table ${name}. ${where}, or name the table ${hostTableName(key)}.`);
    }
    const missing = columnsOf(key).find(([column, { required }]) => required && found.columns[column] === undefined);
    if (missing !== undefined) throw invalid(name, null, `Table ${name} has no column ${missing[1].header}. Add a column with that header text.`);
  }
}

function readTable(workbook: WorkbookSnapshot, key: TableKey): ReadTable | null {
  const found = locateTable(workbook, key);
  if (found === null) return null;
  const { sheet, headerRow, firstColumn, lastColumn, lastRow } = found;
  const header = sheet.values[headerRow] ?? [];
  const headers: string[] = [];
  for (let column = firstColumn; column <= lastColumn; column += 1) headers.push(showCell(header[column]).trim());

  const columns: Record<string, number> = {};
  const folded = headers.map(foldName);
  for (const [name, column] of columnsOf(key)) {
    const index = folded.indexOf(foldName(column.header));
    if (index >= 0) columns[name] = firstColumn + index;
  }

  const show = (row: ReadRow): Shown => showRow(sheet.values[row.row] ?? [], headers, firstColumn, key, row);
  const fields = columnsOf(key).map(([name, column]) => ({ name, column, at: columns[name] ?? -1 }));
  const typed = fields.filter(({ column, at }) => column.kind !== "formula" && at >= 0);

  const rows: Row[] = [];
  const faults: CellFault[] = [];
  for (let row = headerRow + 1; row <= lastRow; row += 1) {
    const line = sheet.values[row] ?? [];
    // A row counts once somebody typed into it: a formula that answers "" does not make one.
    if (!typed.some(({ at }) => !isBlank(line[at]))) continue;
    const read = new ReadRow(row, show) as unknown as Record<string, unknown>;
    for (const { name, column, at } of fields) {
      try {
        read[name] = readCell(at < 0 ? null : (line[at] ?? null), column);
      } catch (thrown) {
        if (!(thrown instanceof Problem)) throw thrown;
        read[name] = blankOf(column);
        faults.push({ table: key, sheet: sheet.name, row, column: at, header: column.header, problem: thrown });
      }
    }
    rows.push(read as unknown as Row);
  }
  return { key, name: tables[key].name, sheet: sheet.name, headerRow, columns, firstColumn, lastColumn, lastRow, rows, faults };
}

/** Shows every cell of a row by its header; a date as ISO text. */
function showRow(line: readonly CellValue[], headers: readonly string[], firstColumn: number, key: TableKey, row: ReadRow): Shown {
  const shown = Object.create(null) as Record<string, string>;
  headers.forEach((text, index) => {
    if (text !== "") shown[text] = showCell(line[firstColumn + index]);
  });
  for (const [name, { kind, header }] of columnsOf(key)) {
    const value = kind === "date" ? cellOf(row, name) : null;
    if (typeof value === "string") shown[header] = value;
  }
  return shown;
}
