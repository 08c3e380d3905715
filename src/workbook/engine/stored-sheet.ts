import type { ICellData, IRange, IRowData, IStyleData, IWorkbookData, IWorksheetData, ISheetDataValidationRule, Nullable } from "@univerjs/core";
import type { IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";
import type { Area, CellValue, PrintPlan, TablePlan } from "../../sheet";
import type { LineMove, SheetFilter } from "../document/workbook-document";

/**
 * A style of the engine, and what the engine does not know: whether people may type into the cell on a protected sheet, and which look of
 * the file it began as.
 */
export type StoredStyle = IStyleData & { unlocked?: 1; look?: number };

/** What the engine has no place for and a sheet carries along in its `custom` data. Areas move when rows or columns come and go. */
export interface SheetExtras {
  tables?: TablePlan[] | undefined;
  /** Missing in a plan that an earlier release kept. */
  filters?: readonly SheetFilter[] | undefined;
  print?: PrintPlan;
  /** Protection as it stood in the file; the sheet is protected when this is there. */
  protection?: Record<string, unknown>;
  /** Pictures, shapes and charts that the file holds for this sheet. */
  drawings?: number | undefined;
  /** Merged areas that reach past the cells that the engine has: it would go through every one of them. */
  wideMerges?: Area[];
  /** True for a sheet hidden so that only a program can show it. */
  veryHidden?: boolean;
  /** Columns that are frozen where there is room for others beside them; the grid is too narrow for that now. */
  frozenColumns?: number;
  /** Rows and columns that came or went since the file was read. */
  moves?: LineMove[] | undefined;
}

/** The engine's own sheet data together with the rules that it keeps apart from the sheet. */
export interface StoredSheet {
  readonly sheet: Partial<IWorksheetData> & { readonly id: string };
  readonly validations: readonly ISheetDataValidationRule[];
  readonly conditionalFormats: readonly IConditionFormattingRule[];
}

/** A formula that fills more cells than its own: the area with the first cell in it, and what the cells show. */
export interface Spill {
  readonly area: Area;
  readonly values: readonly (readonly CellValue[])[];
}

/** A whole workbook as plain data, as the engine stores it, and what the engine computes but does not store. */
export interface StoredWorkbook {
  readonly data: IWorkbookData;
  /** Spilled tables by the id of the sheet. */
  readonly spills: Readonly<Record<string, readonly Spill[]>>;
}

/** Names under which the engine's plug-ins keep their share of a stored workbook. */
export const resourceNames = {
  validations: "SHEET_DATA_VALIDATION_PLUGIN",
  conditionalFormats: "SHEET_CONDITIONAL_FORMATTING_PLUGIN",
  names: "SHEET_DEFINED_NAME_PLUGIN",
  notes: "SHEET_NOTE_PLUGIN",
} as const;

/** The styles of a workbook, by the ids under which cells name them. */
export type StyleTable = Readonly<Record<string, Nullable<IStyleData>>>;

/** Walks the cells that a stored sheet holds, row by row. */
export function eachCell({ cellData }: Pick<Partial<IWorksheetData>, "cellData">, visit: (cell: ICellData, row: number, column: number) => void): void {
  for (const [row, line] of numbered(cellData)) {
    for (const [column, cell] of numbered(line)) visit(cell, row, column);
  }
}

/** Lists what the engine keeps by number, in rows, columns and cells, without the gaps. */
export function numbered<T>(list: Readonly<Record<number, T | null | undefined>> | undefined): [number, T][] {
  return Object.entries(list ?? {}).flatMap(([number, one]) => (one === null || one === undefined ? [] : [[Number(number), one]]));
}

/** Finds the style of a cell, which names one by its id or holds one itself. */
export function findStyle(styles: StyleTable, id: ICellData["s"]): StoredStyle | undefined {
  return ((typeof id === "string" ? styles[id] : id) as StoredStyle | null | undefined) ?? undefined;
}

/** Reads what a sheet carries along. */
export function extrasOf(sheet: Pick<Partial<IWorksheetData>, "custom">): SheetExtras {
  return (sheet.custom ?? {}) as SheetExtras;
}

/** Tells whether a filter keeps a row out of sight: the row carries the mark, and takes it along. */
export function isFilteredRow(row: Nullable<Partial<IRowData>>): boolean {
  return row?.custom?.["isFiltered"] === true;
}

/** Reads one plug-in's share of a stored workbook. */
export function readResource(data: IWorkbookData, name: string): unknown {
  const text = data.resources?.find((resource) => resource.name === name)?.data;
  return text === undefined || text === "" ? undefined : JSON.parse(text);
}

export function toRange({ row, column, rows, columns }: Area): IRange {
  return { startRow: row, startColumn: column, endRow: row + rows - 1, endColumn: column + columns - 1 };
}

export function toArea({ startRow, startColumn, endRow, endColumn }: IRange): Area {
  return { row: startRow, column: startColumn, rows: endRow - startRow + 1, columns: endColumn - startColumn + 1 };
}

// The font the engine draws in is wider than the spreadsheet host's, whose digits take 7 pixels.
const digitPixels = 8;

/** Pixels of a column that is so many characters of the standard font wide. */
export function columnPixels(characters: number): number {
  return Math.round(characters * digitPixels + 5);
}

export function columnCharacters(pixels: number): number {
  return Math.round(((pixels - 5) / digitPixels) * 100) / 100;
}

/** Pixels of a height in points, at 96 pixels an inch. */
export function rowPixels(points: number): number {
  return Math.round((points * 4) / 3);
}

export function rowPoints(pixels: number): number {
  return Math.round(pixels * 75) / 100;
}

/** Has a workbook open with a sheet in front that is not its first. */
export function withFront(data: IWorkbookData, name: string): IWorkbookData {
  return { ...data, custom: { ...data.custom, front: name } };
}

/** The id of the sheet with which a workbook opens, where it says so. */
export function frontOf({ custom, sheets = {} }: Partial<IWorkbookData>): string | undefined {
  return Object.entries(sheets).find(([, { name }]) => name !== undefined && name === custom?.["front"])?.[0];
}

/** What the name of a rule ends in whose areas reach to the last row or column of the sheet: the engine goes through every cell of a rule, and is given those it has. */
export const toTheEnd = "…";

/** Makes a workbook of one empty sheet. */
export function emptyWorkbook(): Partial<IWorkbookData> {
  return { id: "workbook", name: "Workbook", sheetOrder: ["sheet1"], sheets: { sheet1: { id: "sheet1", name: "Sheet1", rowCount: 200, columnCount: 26, cellData: {} } } };
}
