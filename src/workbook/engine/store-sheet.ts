import {
  DataValidationErrorStyle, DataValidationOperator, DataValidationRenderMode,
  type ICellData, type IObjectMatrixPrimitiveType, type ISheetDataValidationRule, type IWorksheetData,
} from "@univerjs/core";
import type { Cell, CellStyle, SheetPlan, Validation } from "../../sheet";
import { filtersOfTables } from "../document/sheet-filter";
import { borderLine, cellKind, horizontal, no, vertical, wrap, yes } from "./engine-values";
import { formulaFormat } from "./engine-formats";
import { columnPixels, rowPixels, toRange, type SheetExtras, type StoredSheet, type StoredStyle } from "./stored-sheet";

/** Adds a style to the workbook's and answers with the id under which cells refer to it. */
export type KeepStyle = (style: StoredStyle) => string;

/** Turns a sheet plan into a sheet as the engine stores it. `newId` makes an id that no rule or sheet has yet. */
export function storeSheet(plan: SheetPlan, keepStyle: KeepStyle, newId: () => string): StoredSheet {
  const styleIds = new Map(Object.entries(plan.styles).map(([name, style]) => [name, keepStyle(storedStyle(style))]));
  const cellData: IObjectMatrixPrimitiveType<ICellData> = {};
  plan.rows.forEach((cells, row) => {
    const line: Record<number, ICellData> = {};
    cells.forEach((cell, column) => {
      const stored = storedCell(cell);
      const style = cell.style === undefined ? undefined : styleIds.get(cell.style);
      if (style !== undefined) stored.s = style;
      if (Object.keys(stored).length > 0) line[column] = stored;
    });
    cellData[row] = line;
  });
  const columns = Math.max(plan.columnWidths.length, ...plan.rows.map((cells) => cells.length));
  const extras: SheetExtras = { tables: [...(plan.tables ?? [])], filters: filtersOfTables(plan.tables ?? []), ...(plan.print && { print: plan.print }) };
  return {
    sheet: {
      id: newId(),
      name: plan.name,
      tabColor: plan.tabColor ?? "",
      rowCount: Math.max(plan.rows.length + 50, 200),
      columnCount: Math.max(columns + 6, 26),
      cellData,
      rowData: Object.fromEntries(Object.entries(plan.rowHeights ?? {}).map(([row, points]) => [row, { h: rowPixels(points), ia: no }])),
      columnData: columnData(plan),
      mergeData: (plan.merges ?? []).map(toRange),
      freeze: freeze(plan.freeze),
      custom: extras,
    },
    validations: (plan.validations ?? []).map((validation) => storedValidation(validation, newId())),
    conditionalFormats: (plan.conditionalFormats ?? []).map(({ area, formula, style }) =>
      formulaFormat(newId(), [toRange(area)], formula, storedStyle(plan.styles[style] ?? {})),
    ),
  };
}

/** Turns one planned cell into the engine's, a formula with the result that is known. */
export function storedCell({ value = null, formula }: Cell): ICellData {
  if (formula !== undefined) return { f: formula, ...(value !== null && storedValue(value)) };
  return value === null || value === "" ? {} : storedValue(value);
}

/** Text is marked as text, so that it never becomes a number, a date or a formula. */
function storedValue(value: string | number | boolean): ICellData {
  if (typeof value === "number") return { v: value, t: cellKind.number };
  return typeof value === "boolean" ? { v: value ? 1 : 0, t: cellKind.boolean } : { v: value, t: cellKind.text };
}

/** Freezes so many rows and columns at the top left. */
export function freeze(frozen: { readonly rows: number; readonly columns: number } | undefined) {
  const { rows, columns } = frozen ?? { rows: 0, columns: 0 };
  return { xSplit: columns, ySplit: rows, startRow: rows > 0 ? rows : -1, startColumn: columns > 0 ? columns : -1 };
}

function columnData({ columnWidths, hiddenColumns = [] }: SheetPlan) {
  const data: NonNullable<IWorksheetData["columnData"]> = {};
  columnWidths.forEach((characters, column) => {
    if (characters !== null) data[column] = { w: columnPixels(characters) };
  });
  for (const column of hiddenColumns) data[column] = { ...data[column], hd: yes };
  return data;
}

function storedStyle(style: CellStyle): StoredStyle {
  const line = { s: borderLine.thin, cl: { rgb: style.borderColor ?? "#000000" } };
  return {
    ...(style.bold && { bl: yes }),
    ...(style.italic && { it: yes }),
    ...(style.color && { cl: { rgb: style.color } }),
    ...(style.fill && { bg: { rgb: style.fill } }),
    ...(style.fontSize && { fs: style.fontSize }),
    ...(style.wrap && { tb: wrap }),
    ...(style.align && { ht: horizontal[style.align] }),
    ...(style.vertical && { vt: vertical[style.vertical] }),
    ...(style.border && { bd: style.border === "all" ? { t: line, r: line, b: line, l: line } : { b: line } }),
    ...(style.format && { n: { pattern: style.format } }),
    ...(style.locked === false && { unlocked: 1 as const }),
  };
}

function storedValidation({ area, rule, message, strict }: Validation, uid: string): ISheetDataValidationRule {
  const base = { uid, ranges: [toRange(area)], allowBlank: true, error: message, showErrorMessage: true, errorStyle: strict ? DataValidationErrorStyle.STOP : DataValidationErrorStyle.WARNING };
  switch (rule.kind) {
    case "list":
      return { ...base, type: "list", formula1: rule.items.join(","), showDropDown: true, renderMode: DataValidationRenderMode.ARROW };
    case "list-of":
      return { ...base, type: "list", formula1: rule.formula, showDropDown: true, renderMode: DataValidationRenderMode.ARROW };
    case "date":
      return { ...base, type: "date", operator: DataValidationOperator.GREATER_THAN_OR_EQUAL, formula1: "1900-01-01" };
    default:
      return { ...base, type: rule.kind === "whole" ? "whole" : "decimal", ...bounds(rule.least, rule.most) };
  }
}

function bounds(least: number | undefined, most: number | undefined) {
  if (least !== undefined && most !== undefined) return { operator: DataValidationOperator.BETWEEN, formula1: String(least), formula2: String(most) };
  if (most !== undefined) return { operator: DataValidationOperator.LESS_THAN_OR_EQUAL, formula1: String(most) };
  return { operator: DataValidationOperator.GREATER_THAN_OR_EQUAL, formula1: String(least ?? -1e300) };
}

