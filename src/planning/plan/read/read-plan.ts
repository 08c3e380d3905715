import { parseScheme, type Scheme } from "../../capacity";
import { invalid, Problem, quote } from "../../text";
import { parseShare, parseSize, parseSizeOrZero, type Bytes, type Share } from "../../quantity";
import { locateTable } from "./locate-table";
import { isBlank, isError, showCell } from "../../../sheet";
import type { CellValue } from "../../../sheet";
import type { WorkbookSnapshot } from "../../../sheet";
import { tables, type Column, type ColumnKind, type Table, type TableKey, type Tables } from "../schema";

/** What a cell of each kind is read as. A blank or unreadable cell is "" for texts, false for ticks and null for the rest. */
export interface Reading {
  text: string;
  choice: string;
  count: number | null;
  number: number | null;
  size: Bytes | null;
  share: Share | null;
  scheme: Scheme | null;
  /** ISO date, such as 2026-05-31. */
  date: string | null;
  tick: boolean;
  /** Formula columns are for people: nothing is read from them. */
  formula: null;
}

/** One row of a planning table: its columns by their keys, and where it stands. */
export type Row<Columns extends Record<string, Column> = Record<string, Column>> = {
  readonly [Key in keyof Columns]: Reading[Columns[Key]["kind"]];
} & {
  /** Row of the sheet, counted from 0. */
  readonly row: number;
  /** Every cell as a person reads it, by header text, the user's own columns included. Has no prototype. Not copied with the row. */
  readonly shown: Readonly<Record<string, string>>;
};

/** A cell that could not be read as its column asks. */
export interface CellFault {
  readonly table: TableKey;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly header: string;
  readonly problem: Problem;
}

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

export type PlanRow<Key extends TableKey> = Row<Tables[Key]["columns"]>;

/**
 * Reads the planning tables of a workbook into typed rows.
 *
 * Tables are found by table name or marker cell, columns by header text in any order and without case; rows that are wholly blank are
 * passed over. Nothing is thrown: a table or column that is missing is missing in the answer, and a cell that cannot be read is blank in
 * its row and stands among the faults.
 */
export function readPlan(workbook: WorkbookSnapshot): Plan {
  const keys = Object.keys(tables) as TableKey[];
  const read = keys.map((key) => [key, readTable(workbook, key)] as const);
  const faults = read.flatMap(([, table]) => table?.faults ?? []);
  return { ...(Object.fromEntries(read) as unknown as PlanTables), faults };
}

/** Rows of one table; none where the table is not there. */
export function rowsOf<Key extends TableKey>(plan: Plan, key: Key): readonly PlanRow<Key>[] {
  return (plan[key]?.rows ?? []) as unknown as readonly PlanRow<Key>[];
}

/** Refuses a plan that lacks a table, or a column of it, that the work at hand cannot do without. */
export function requireTables(plan: Plan, needed: readonly TableKey[]): void {
  for (const key of needed) {
    const table: Table = tables[key];
    const found: ReadTable | null = plan[key];
    if (found === null) {
      throw invalid(table.name, null, `The workbook has no table ${table.name}. Choose Set up tables, or name the table Bay${table.name}.`);
    }
    const missing = Object.entries(table.columns).find(([column, { required }]) => required && found.columns[column] === undefined);
    if (missing !== undefined) {
      throw invalid(table.name, null, `Table ${table.name} has no column ${missing[1].header}. Add a column with that header text.`);
    }
  }
}

function readTable(workbook: WorkbookSnapshot, key: TableKey): ReadTable | null {
  const table: Table = tables[key];
  const found = locateTable(workbook, table);
  if (found === null) return null;
  const { sheet, headerRow, firstColumn, lastColumn, lastRow } = found;
  const header = sheet.values[headerRow] ?? [];
  const headers: string[] = [];
  for (let column = firstColumn; column <= lastColumn; column += 1) headers.push(showCell(header[column]).trim());

  const columns: Record<string, number> = {};
  for (const [name, column] of Object.entries(table.columns)) {
    const index = headers.findIndex((text) => text.toLowerCase() === column.header.toLowerCase());
    if (index >= 0) columns[name] = firstColumn + index;
  }

  // What a row shows is asked for of few rows: it is worked out when it is, by every row's common prototype.
  const prototype = Object.defineProperty({}, "shown", {
    get(this: Row) {
      return showRow(sheet.values[this.row] ?? [], headers, firstColumn, table, this);
    },
  });
  const fields = Object.entries(table.columns).map(([name, column]) => ({ name, column, at: columns[name] ?? -1 }));
  const typed = fields.filter(({ column, at }) => column.kind !== "formula" && at >= 0);

  const rows: Row[] = [];
  const faults: CellFault[] = [];
  for (let row = headerRow + 1; row <= lastRow; row += 1) {
    const line = sheet.values[row] ?? [];
    // A row counts once somebody typed into it: a formula that answers "" does not make one.
    if (!typed.some(({ at }) => !isBlank(line[at]))) continue;
    const read = Object.create(prototype as object) as Record<string, unknown>;
    read.row = row;
    for (const { name, column, at } of fields) {
      const cell = at < 0 ? null : (line[at] ?? null);
      try {
        read[name] = readCell(cell, column);
      } catch (thrown) {
        if (!(thrown instanceof Problem)) throw thrown;
        read[name] = blanks[column.kind];
        faults.push({ table: key, sheet: sheet.name, row, column: at, header: column.header, problem: thrown });
      }
    }
    rows.push(read as unknown as Row);
  }
  return { key, name: table.name, sheet: sheet.name, headerRow, columns, firstColumn, lastColumn, lastRow, rows, faults };
}

/** Shows every cell of a row by its header; a date as ISO text. */
function showRow(line: readonly CellValue[], headers: readonly string[], firstColumn: number, table: Table, row: object): Readonly<Record<string, string>> {
  const shown = Object.create(null) as Record<string, string>;
  headers.forEach((text, index) => {
    if (text !== "") shown[text] = showCell(line[firstColumn + index]);
  });
  for (const [name, { kind, header }] of Object.entries(table.columns)) {
    const value = (row as Readonly<Record<string, unknown>>)[name];
    if (kind === "date" && typeof value === "string") shown[header] = value;
  }
  return shown;
}

const blanks: Reading = {
  text: "", choice: "", count: null, number: null, size: null, share: null, scheme: null, date: null, tick: false, formula: null,
};

const readers: { readonly [Kind in ColumnKind]: (cell: string | number | boolean, column: Column) => Reading[Kind] } = {
  text: (cell) => showCell(cell).trim(),
  choice: (cell, { header, choices = [] }) => {
    const text = showCell(cell).trim();
    const match = choices.find((one) => one.toLowerCase() === text.toLowerCase());
    if (match === undefined) throw invalid(header, cell, `${header} ${quote(text)} is not known. Write ${choices.join(" or ")}.`);
    return match;
  },
  number: (cell, { header }) => readNumber(cell, header),
  count: (cell, { header }) => {
    const number = readNumber(cell, header);
    if (!Number.isInteger(number) || number < 0) throw invalid(header, cell, `${header} ${quote(cell)} is no count. Write a whole number.`);
    return number;
  },
  size: (cell, { header, zero }) => (zero === true ? parseSizeOrZero(cell, header) : parseSize(cell, header)),
  share: (cell, { header }) => parseShare(cell, header),
  scheme: (cell, { header }) => parseScheme(cell, header),
  date: (cell, { header }) => readDate(cell, header),
  tick: (cell) => cell === true || /^(yes|y|x|true|1|✓|✔)$/i.test(showCell(cell).trim()),
  formula: () => null,
};

function readCell(cell: CellValue, column: Column): unknown {
  if (column.kind === "formula" || isBlank(cell)) return blanks[column.kind];
  if (isError(cell)) throw invalid(column.header, cell.error, `${column.header} shows ${cell.error}. Mend that cell first.`);
  return readers[column.kind](cell as string | number | boolean, column);
}

function readNumber(cell: string | number | boolean, header: string): number {
  const number = typeof cell === "number" ? cell : typeof cell === "string" && /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell.trim()) ? Number(cell) : NaN;
  if (!Number.isFinite(number)) throw invalid(header, cell, `${header} ${quote(cell)} is not a number. Write digits, such as 42 or 0.5.`);
  return number;
}

/** Day 0 of the sheet's calendar; serial numbers from 61 on count true days from here. */
const dayZero = Date.UTC(1899, 11, 30);

function readDate(cell: string | number | boolean, header: string): string {
  if (typeof cell === "number" && cell >= 61 && cell < 2_958_466) {
    return new Date(dayZero + Math.floor(cell) * 86_400_000).toISOString().slice(0, 10);
  }
  const text = showCell(cell).trim();
  const parsed = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  if (parsed === null || Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== text) {
    throw invalid(header, cell, `${header} ${quote(text)} is no date. Write it as 2026-05-31.`);
  }
  return text;
}
