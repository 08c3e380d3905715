import { foldName, quote } from "../../text";
import {
  columnLetters, isBlank, quoteSheetName, sheetDayOf,
  type Area, type Cell, type CellPlace, type CellStyle, type Scalar, type SheetPlan, type Validation, type WorkbookSnapshot,
} from "../../../sheet";
import { hostTableName, locateTable, markerText, type TableLocation } from "../read";
import { columnsOf, isFurther, nameColumn, tableKeys, tables, type Column, type ColumnKind, type TableKey, type TableRow, type TableRows } from "../schema";

/** Names the tables of set-up that a workbook lacks. */
export function missingTables(workbook: WorkbookSnapshot): TableKey[] {
  return tableKeys.filter((key) => !isFurther(key) && locateTable(workbook, key) === null);
}

/** Names the tables that set-up leaves out, that a workbook lacks and that may be asked for. */
export function furtherTables(workbook: WorkbookSnapshot): TableKey[] {
  return tableKeys.filter((key) => isFurther(key) && locateTable(workbook, key) === null);
}

/** Plans one sheet for each table of set-up that the workbook lacks, and for each further one that has rows; see `planTables`. */
export function planSetUp(workbook: WorkbookSnapshot, rows: TableRows = {}): SheetPlan[] {
  return planTables(workbook, tableKeys.filter((key) => !isFurther(key) || (rows[key] ?? []).length > 0), rows);
}

/**
 * Plans one sheet for each of some planning tables that the workbook lacks, filled with `rows`; tables that are there are left as they are.
 *
 * On a sheet: the marker in A1, the note in A2, the headers in row 4, rows from row 5 on. Below the rows stand blank ones with the
 * formats and formulas of the table. A sheet whose name is taken by something else gets a number behind its name.
 */
export function planTables(workbook: WorkbookSnapshot, keys: readonly TableKey[], rows: TableRows = {}): SheetPlan[] {
  const taken = new Set(workbook.sheets.map(({ name }) => foldName(name)));
  const places = new Map(placesOfAll(workbook, thoseWithRoom(earlierTables(workbook))));
  const added: TableKey[] = [];
  for (const key of keys) {
    if (places.has(key)) continue;
    const sheet = freeSheetName(tables[key].name, taken);
    taken.add(foldName(sheet));
    places.set(key, { sheet, firstRow: headerRow + 1, column: (name) => columnsOf(key).findIndex(([column]) => column === name) });
    added.push(key);
  }
  return added.map((key) => planTable(key, rows[key] ?? [], places));
}

/** A table of an earlier layout, and the columns that it lacks since. */
interface EarlierTable {
  readonly key: TableKey;
  readonly found: TableLocation;
  readonly lacks: readonly Column[];
}

/** Finds the tables of an earlier layout: those that lack columns which a later one brought. */
export function earlierTables(workbook: WorkbookSnapshot): EarlierTable[] {
  return tableKeys.flatMap((key): EarlierTable[] => {
    const found = locateTable(workbook, key);
    if (found === null) return [];
    const headers = new Set((found.sheet.values[found.headerRow] ?? []).slice(found.firstColumn, found.lastColumn + 1).map((cell) => (typeof cell === "string" ? foldName(cell) : "")));
    const lacks = columnsOf(key).flatMap(([, column]) => (column.since !== undefined && !headers.has(foldName(column.header)) ? [column] : []));
    return lacks.length === 0 ? [] : [{ key, found, lacks }];
  });
}

/** A block of cells that brings a table up to today's layout, and the area that the table covers then. */
export interface BroughtUp {
  readonly key: TableKey;
  readonly sheet: string;
  readonly table: string;
  readonly area: Area;
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly Cell[])[];
}

/**
 * Plans to add, behind the last column of every table of an earlier layout, the columns that it lacks; nothing that stands is moved or changed.
 *
 * A table with anything in the cells that would be needed is left as it is: the check names its missing columns, and it works without.
 */
export function planBringUp(workbook: WorkbookSnapshot): BroughtUp[] {
  const earlier = thoseWithRoom(earlierTables(workbook));
  const places = placesOfAll(workbook, earlier);
  return earlier.map(({ key, found: { sheet, headerRow, firstColumn, lastColumn, lastRow }, lacks }): BroughtUp => {
    const body = Array.from({ length: lastRow - headerRow }, (_, at) =>
      lacks.map((column): Cell => (column.kind === "formula" ? { formula: resolve(column.formula ?? "", key, headerRow + 1 + at, places) ?? "" } : {})),
    );
    return {
      key, sheet: sheet.name, table: hostTableName(key), row: headerRow, column: lastColumn + 1, cells: [lacks.map(({ header }): Cell => ({ value: header })), ...body],
      area: { row: headerRow, column: firstColumn, rows: lastRow - headerRow + 1, columns: lastColumn - firstColumn + 1 + lacks.length },
    };
  });
}

/** A formula of ours in a table, and where it stands. */
export interface MendedFormula extends CellPlace {
  readonly key: TableKey;
  readonly sheet: string;
  readonly formula: string;
}

/**
 * Finds the cells in which a formula stands as an earlier layout wrote it, and plans today's in its place, for workbooks as `planBringUp` leaves them.
 *
 * A formula that differs from it in anything is somebody's own and stays.
 */
export function planFormulas(workbook: WorkbookSnapshot): MendedFormula[] {
  const places = placesOfAll(workbook, thoseWithRoom(earlierTables(workbook)));
  return [...places].flatMap(([key, { sheet, firstRow, column: columnAt }]) => {
    const standing = workbook.sheets.find(({ name }) => name === sheet)?.formulas ?? [];
    return columnsOf(key).flatMap(([name, { formula = "", formerly = [] }]): MendedFormula[] => {
      const column = columnAt(name);
      if (column < 0 || formerly.length === 0) return [];
      return standing.flatMap((line, row): MendedFormula[] => {
        const found = line[column] ?? null;
        if (row < firstRow || found === null || !formerly.some((one) => resolve(one, key, row, places) === found)) return [];
        const now = resolve(formula, key, row, places);
        return now === null ? [] : [{ key, sheet, row, column, formula: now }];
      });
    });
  });
}

function thoseWithRoom(earlier: readonly EarlierTable[]): EarlierTable[] {
  return earlier.filter(({ found: { sheet, headerRow, lastColumn, lastRow }, lacks }) =>
    sheet.values.slice(headerRow, lastRow + 1).every((line, at) =>
      lacks.every((_, beside) => isBlank(line[lastColumn + 1 + beside]) && (sheet.formulas[headerRow + at]?.[lastColumn + 1 + beside] ?? null) === null),
    ),
  );
}

/** Says where the columns of the tables that are there will stand once the earlier ones are brought up. */
function placesOfAll(workbook: WorkbookSnapshot, earlier: readonly EarlierTable[]): ReadonlyMap<TableKey, TablePlace> {
  return new Map(
    tableKeys.flatMap((key): [TableKey, TablePlace][] => {
      const place = placeOf(workbook, key);
      if (place === null) return [];
      const own = earlier.find((one) => one.key === key);
      if (own === undefined) return [[key, place]];
      const added = new Map(columnsOf(key).map(([name, column]) => [name, own.lacks.indexOf(column)]));
      const columnAt = (name: string): number => ((added.get(name) ?? -1) < 0 ? place.column(name) : own.found.lastColumn + 1 + added.get(name)!);
      return [[key, { ...place, column: columnAt }]];
    }),
  );
}

const headerRow = 3;
/** Rows of a table that formulas and lists look at: as many as a plan is checked for, and a few. */
const lookedAtRows = 2000;

/** Where the rows of a table stand, for formulas and lists of other tables. */
interface TablePlace {
  readonly sheet: string;
  readonly firstRow: number;
  /** Column of the sheet, from 0; below 0 where the table has no such column. */
  readonly column: (key: string) => number;
}

function placeOf(workbook: WorkbookSnapshot, key: TableKey): TablePlace | null {
  const found = locateTable(workbook, key);
  if (found === null) return null;
  const headers = (found.sheet.values[found.headerRow] ?? []).map((cell) => (typeof cell === "string" ? foldName(cell) : ""));
  const known = new Map(columnsOf(key).map(([name, { header }]) => [name, headers.indexOf(foldName(header), found.firstColumn)]));
  return { sheet: found.sheet.name, firstRow: found.headerRow + 1, column: (name) => known.get(name) ?? -1 };
}

function freeSheetName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(foldName(name))) return name;
  for (let number = 2; ; number += 1) {
    const numbered = `${name} ${number}`;
    if (!taken.has(foldName(numbered))) return numbered;
  }
}

function planTable<Key extends TableKey>(key: Key, rows: readonly TableRow<Key>[], places: ReadonlyMap<TableKey, TablePlace>): SheetPlan {
  const columns = columnsOf(key);
  const typed: readonly Readonly<Record<string, Scalar | undefined>>[] = rows;
  const count = Math.max(rows.length + 10, 40);
  const cells: Cell[][] = [
    [{ value: markerText(key), style: "marker" }],
    [{ value: tables[key].note, style: "note" }],
    [],
    columns.map(([, { header, kind }]) => ({ value: header, style: centred.has(kindStyles[kind]) ? "headerCentred" : "header" })),
  ];
  for (let index = 0; index < count; index += 1) {
    const place = headerRow + 1 + index;
    cells.push(columns.map(([name, column]) => cellOf(column, typed[index]?.[name] ?? null, (formula) => resolve(formula, key, place, places))));
  }
  return {
    name: places.get(key)!.sheet,
    rows: cells,
    styles,
    rowHeights: heightsOf(columns.map(([, { width }]) => width ?? null), cells),
    columnWidths: columns.map(([name, column]) => widthOf(column, typed.map((row) => row[name]))),
    freeze: { rows: headerRow + 1, columns: 0 },
    validations: columns.flatMap(([, column], index) => validationOf(column, { row: headerRow + 1, column: index, rows: count, columns: 1 }, places)),
    tables: [{ name: hostTableName(key), area: { row: headerRow, column: 0, rows: count + 1, columns: columns.length } }],
    print: { orientation: "landscape", fitToWidth: true, titleRows: { row: headerRow, rows: 1 }, footer: tables[key].name, breaksBefore: [] },
  };
}

const kindStyles: Readonly<Record<ColumnKind, StyleName>> = {
  text: "text", choice: "text", scheme: "text", tick: "text", size: "size", count: "plain", number: "plain", share: "share", date: "date", formula: "formula",
};

/** Numbers stand in the middle of their column, so that none touches the text of the next. */
const centred: ReadonlySet<StyleName> = new Set<StyleName>(["size", "plain", "share", "date", "formula"]);

const header: CellStyle = { bold: true, fill: "#dfe7e4", border: "bottom", borderColor: "#4d6b63", vertical: "middle" };

const styles = {
  marker: { color: "#5c5c5c", fontSize: 9 },
  note: { italic: true, color: "#404040" },
  header,
  headerCentred: { ...header, align: "center" },
  text: { format: "@", vertical: "top" },
  prose: { format: "@", vertical: "top", wrap: true },
  size: { align: "center", vertical: "top" },
  plain: { align: "center", vertical: "top" },
  share: { format: "0.0%", align: "center", vertical: "top" },
  date: { format: "yyyy-mm-dd", align: "center", vertical: "top" },
  formula: { format: "#,##0.00", align: "center", color: "#34524a", vertical: "top" },
} as const satisfies Readonly<Record<string, CellStyle>>;

type StyleName = keyof typeof styles;

function cellOf(column: Column, value: Scalar, resolved: (text: string) => string | null): Cell {
  const style = column.kind === "text" && column.width !== undefined ? "prose" : kindStyles[column.kind];
  if (column.kind === "formula") {
    const formula = column.formula === undefined ? null : resolved(column.formula);
    return formula === null ? { style } : { formula, style };
  }
  if (value === null) return { style };
  if (column.kind === "date" && typeof value === "string") return { value: sheetDayOf(value) ?? value, style };
  return { value, style };
}

/** Points that a line of text takes. */
const lineHeight = 15;

/** Makes rows high enough for the texts that wrap in columns of a given width; those of one line keep the usual height. */
function heightsOf(widths: readonly (number | null)[], rows: readonly (readonly Cell[])[]): Record<number, number> {
  const heights: Record<number, number> = {};
  rows.forEach((row, at) => {
    if (at <= headerRow) return;
    const lines = Math.max(1, ...row.map(({ value }, column) => Math.ceil(String(value ?? "").length / (widths[column] ?? Infinity))));
    if (lines > 1) heights[at] = lines * lineHeight;
  });
  return heights;
}

/** Characters that the arrow of a filter takes of a header. */
const filterArrow = 2;

function widthOf({ header, width, kind, required, from }: Column, values: readonly (Scalar | undefined)[]): number {
  if (width !== undefined) return width;
  const longest = kind === "date" ? 10 : Math.max(0, ...values.map((value) => String(value ?? "").length));
  // Names are longer than most headers, and a blank table is filled later.
  const least = values.length === 0 && (required === true || from !== undefined) ? 16 : 6;
  return Math.min(36, Math.max(header.length + filterArrow, longest, least) + 3);
}

/**
 * Writes a formula of the schema for one row: `[Header]` is the cell of that column in the row, `[Table.Header]` the plain range of a
 * column of another table, which every host understands. Null where the workbook's own tables lack one of the columns.
 */
function resolve(formula: string, own: TableKey, row: number, places: ReadonlyMap<TableKey, TablePlace>): string | null {
  const lacking: string[] = [];
  const text = formula.replace(/\[(?:([^.\]]+)\.)?([^\]]+)\]/g, (_, name: string | undefined, header: string) => {
    const key = name === undefined ? own : tableKeys.find((one) => tables[one].name === name);
    const column = key === undefined ? undefined : columnsOf(key).find(([, one]) => one.header === header);
    if (key === undefined || column === undefined) throw new Error(`The schema has no ${name ?? tables[own].name}.${header}.`);
    const at = places.get(key)?.column(column[0]) ?? -1;
    const place = at < 0 ? null : name === undefined ? `$${columnLetters(at)}${row + 1}` : rangeOf(key, column[0], places);
    if (place === null) lacking.push(header);
    return place ?? "";
  });
  return lacking.length === 0 ? text : null;
}

/** Writes the range of a column of another table; null where the workbook lacks the table, or its own one the column. */
function rangeOf(key: TableKey, name: string, places: ReadonlyMap<TableKey, TablePlace>): string | null {
  const place = places.get(key);
  const at = place?.column(name) ?? -1;
  if (place === undefined || at < 0) return null;
  const { sheet, firstRow } = place;
  const letters = columnLetters(at);
  return `${quoteSheetName(sheet)}!$${letters}$${firstRow + 1}:$${letters}$${firstRow + lookedAtRows}`;
}

function validationOf(column: Column, area: Area, places: ReadonlyMap<TableKey, TablePlace>): Validation[] {
  const { header, choices, suggestions, from, several, kind } = column;
  if (from !== undefined && several !== true) {
    const range = rangeOf(from, nameColumn(from), places);
    // A feed may carry a phase behind its name, such as A/L2: what is not in the list is remarked on, not refused.
    return range === null ? [] : [{ area, rule: { kind: "list-of", formula: `=${range}` }, message: `Choose a row of the table ${tables[from].name}.`, strict: false }];
  }
  if (choices !== undefined) return [{ area, rule: { kind: "list", items: choices }, message: `Write ${choices.join(" or ")}.`, strict: true }];
  if (suggestions !== undefined) return [{ area, rule: { kind: "list", items: suggestions }, message: column.meaning, strict: false }];
  if (kind === "count") return [{ area, rule: { kind: "whole", least: 0 }, message: `${header} is a whole number.`, strict: false }];
  if (kind === "number") return [{ area, rule: { kind: "number" }, message: `${header} is a number.`, strict: false }];
  if (kind === "date") return [{ area, rule: { kind: "date" }, message: `${header} is a date, such as ${quote("2026-05-31")}.`, strict: false }];
  return [];
}
