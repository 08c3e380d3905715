import type { DataValidationOperator, ICellData, IRange, IStyleData, IWorkbookData, IWorksheetData, ISheetDataValidationRule, Nullable } from "@univerjs/core";
import type { IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";
import type { Area, CellValue, PrintPlan, TablePlan } from "../../sheet";

// The engine's enumerations by value: a stored workbook is plain data, and reading one must not load the engine.
export const cellKind = { text: 1, number: 2, boolean: 3, forcedText: 4 } as const;
export const horizontal = { left: 1, center: 2, right: 3, justify: 4 } as const;
export const vertical = { top: 1, middle: 2, bottom: 3 } as const;
export const wrapping = { overflow: 1, clip: 2, wrap: 3 } as const;
/** Comparisons of a rule for typing, by the names that files use too. */
export const comparison = {
  between: "between" as DataValidationOperator.BETWEEN,
  atLeast: "greaterThanOrEqual" as DataValidationOperator.GREATER_THAN_OR_EQUAL,
  atMost: "lessThanOrEqual" as DataValidationOperator.LESS_THAN_OR_EQUAL,
} as const;
/** Kinds of border line, in the order of the engine's numbers. */
export const borderLines = [
  "none", "thin", "hair", "dotted", "dashed", "dashDot", "dashDotDot", "double", "medium", "mediumDashed", "mediumDashDot", "mediumDashDotDot", "slantDashDot", "thick",
] as const;

/** A style of the engine, and whether people may type into the cell on a protected sheet, which the engine does not know. */
export type StoredStyle = IStyleData & { unlocked?: 1 };

/** What the engine has no place for and a sheet carries along in its `custom` data. Areas move when rows or columns come and go. */
export interface SheetExtras {
  tables?: TablePlan[];
  print?: PrintPlan;
  /** Protection as it stood in the file; the sheet is protected when this is there. */
  protection?: Record<string, unknown>;
  /** Notes of cells, in the form of the file library. */
  notes?: { row: number; column: number; note: unknown }[];
  /** Pictures, shapes and charts that the file holds for this sheet. */
  drawings?: number;
  /** Upper left cells of the file's pictures, in its order, as the rows and columns now stand. */
  pictures?: { row: number; column: number }[];
  /** How many drawings the file library cannot write again: charts and shapes. */
  lostDrawings?: number;
  /** Name of the sheet in the file it was read from. */
  fileSheet?: string;
  /** True for a sheet hidden so that only a program can show it. */
  veryHidden?: boolean;
  /** Conditional formats that are no formula, in the form of the file library. */
  otherFormats?: unknown[];
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
} as const;

/** The styles of a workbook, by the ids under which cells name them. */
export type StyleTable = Readonly<Record<string, Nullable<IStyleData>>>;

/** Finds the style of a cell, which names one by its id or holds one itself. */
export function findStyle(styles: StyleTable, id: ICellData["s"]): StoredStyle | undefined {
  return ((typeof id === "string" ? styles[id] : id) as StoredStyle | null | undefined) ?? undefined;
}

/** Reads what a sheet carries along. */
export function extrasOf(sheet: Pick<Partial<IWorksheetData>, "custom">): SheetExtras {
  return (sheet.custom ?? {}) as SheetExtras;
}

/** Counts the charts and shapes of the file a workbook was read from that are lost when it is saved over that file. */
export function countLostDrawings(data: IWorkbookData): number {
  return Object.values(data.sheets).reduce((sum, sheet) => sum + (extrasOf(sheet).lostDrawings ?? 0), 0);
}

/** Reads one plug-in's share of a stored workbook. */
export function readResource<T>(data: IWorkbookData, name: string): T | undefined {
  const text = data.resources?.find((resource) => resource.name === name)?.data;
  return text === undefined || text === "" ? undefined : (JSON.parse(text) as T);
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

/** Makes a workbook of one empty sheet. */
export function emptyWorkbook(): Partial<IWorkbookData> {
  return { id: "workbook", name: "Workbook", sheetOrder: ["sheet1"], sheets: { sheet1: { id: "sheet1", name: "Sheet1", rowCount: 200, columnCount: 26, cellData: {} } } };
}
