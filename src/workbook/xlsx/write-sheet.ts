import type { ICellData, IWorksheetData } from "@univerjs/core";
import type { CellErrorValue, CellValue, ConditionalFormattingOptions, Style, Worksheet } from "exceljs";
import { areaAddress, cellAddress, foldSheetName, type CellValue as PlainValue, type PrintPlan, type TablePlan } from "../../sheet";
import { cellValue } from "../engine/sheet-snapshot";
import { no, yes } from "../engine/engine-values";
import { columnCharacters, eachCell, extrasOf, findStyle, numbered, rowPoints, type Spill, type StoredSheet, type StyleTable } from "../engine/stored-sheet";
import { argb, writeStyle } from "./cell-styles";
import { writeFormatRules } from "./format-rules";
import { toFileFormula } from "./formula-text";
import { clearSheet, insideOf, tablesOf } from "./library-parts";
import { writeValidations } from "./validation-rules";

/** Writes one sheet over a sheet of a file. What the file holds beyond our model, such as pictures, stays where it is. */
export function writeSheet(target: Worksheet, { sheet, validations, conditionalFormats }: StoredSheet, spills: readonly Spill[], styles: StyleTable): void {
  const extras = extrasOf(sheet);
  const looks = new Map<unknown, Partial<Style>>();
  const lookOf = (id: ICellData["s"]): Partial<Style> | undefined => {
    const style = findStyle(styles, id);
    if (!style) return undefined;
    if (!looks.has(style)) looks.set(style, writeStyle(style));
    return looks.get(style);
  };
  const tableStyles = new Map(tablesOf(target).map(({ name, style }) => [name, style]));
  clearSheet(target);
  target.state = sheet.hidden === yes ? (extras.veryHidden === true ? "veryHidden" : "hidden") : "visible";
  target.properties = { ...target.properties, tabColor: sheet.tabColor ? { argb: argb(sheet.tabColor) } : undefined } as Worksheet["properties"];
  writeColumns(target, sheet, lookOf);
  writeRows(target, sheet, spills, lookOf);
  for (const { startRow, startColumn, endRow, endColumn } of sheet.mergeData ?? []) target.mergeCellsWithoutStyle(startRow + 1, startColumn + 1, endRow + 1, endColumn + 1);
  for (const { row, column, note } of extras.notes ?? []) target.getCell(row + 1, column + 1).note = note as string;
  movePictures(target, extras.pictures ?? []);
  writeView(target, sheet);
  writePrint(target, extras.print);
  for (const table of extras.tables ?? []) writeTable(target, table, tableStyles.get(table.name));
  writeValidations(target, validations);
  writeFormatRules(target, { rules: conditionalFormats, others: (extras.otherFormats ?? []) as ConditionalFormattingOptions[] });
  insideOf(target).sheetProtection = extras.protection ?? null;
}

function writeColumns(target: Worksheet, { columnData }: Partial<IWorksheetData>, lookOf: (id: ICellData["s"]) => Partial<Style> | undefined): void {
  for (const [index, one] of numbered(columnData)) {
    const column = target.getColumn(index + 1);
    if (one.w !== undefined) column.width = columnCharacters(one.w);
    if (one.hd === yes) column.hidden = true;
    const look = lookOf(one.s);
    if (look !== undefined) column.style = look;
  }
}

function writeRows(target: Worksheet, sheet: Partial<IWorksheetData>, spills: readonly Spill[], lookOf: (id: ICellData["s"]) => Partial<Style> | undefined): void {
  for (const [index, one] of numbered(sheet.rowData)) {
    // A height that the sheet found for itself is left to the program that opens the file.
    if (one.h !== undefined && one.ia !== yes) target.getRow(index + 1).height = rowPoints(one.h);
    if (one.hd === yes) target.getRow(index + 1).hidden = true;
  }
  const spilledFrom = new Map(spills.map(({ area }) => [`${area.row} ${area.column}`, areaAddress(area)]));
  eachCell(sheet, (stored, row, column) => {
    const value = fileValue(stored, spilledFrom.get(`${row} ${column}`));
    const look = lookOf(stored.s);
    if (value === null && look === undefined) return;
    const cell = target.getCell(row + 1, column + 1);
    if (value !== null) cell.value = value;
    if (look !== undefined) cell.style = look;
  });
  for (const { area, values } of spills) {
    values.forEach((line, down) => {
      line.forEach((value, across) => {
        if (down > 0 || across > 0) target.getCell(area.row + down + 1, area.column + across + 1).value = plainValue(value);
      });
    });
  }
}

/** Turns a cell into a file's. A formula that spills is an array formula over `spilledOver`. */
function fileValue(stored: ICellData, spilledOver: string | undefined): CellValue {
  const value = cellValue(stored, Boolean(stored.f));
  const custom = (stored.custom ?? {}) as { richText?: { text: string }[]; link?: string };
  if (stored.f) {
    const array = spilledOver === undefined ? {} : { shareType: "array", ref: spilledOver };
    return { formula: toFileFormula(stored.f), result: plainValue(value) ?? "", date1904: false, ...array };
  }
  // Text in several fonts, unless it was typed over.
  if (custom.richText?.map(({ text }) => text).join("") === value) return { richText: custom.richText };
  if (custom.link !== undefined && typeof value === "string") return { text: value, hyperlink: custom.link };
  return plainValue(value);
}

/** Errors that a file can hold by name; a younger one is stored as the nearest of them. */
const fileErrors = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

function plainValue(value: PlainValue): string | number | boolean | CellErrorValue | null {
  if (value === null || typeof value !== "object") return value;
  return { error: (fileErrors.has(value.error) ? value.error : "#VALUE!") as CellErrorValue["error"] };
}

/** Moves the pictures of the file by as much as the cells under them moved since it was read. */
function movePictures(target: Worksheet, cells: readonly { readonly row: number; readonly column: number }[]): void {
  target.getImages().forEach(({ range }, index) => {
    const cell = cells[index];
    if (cell === undefined) return;
    const [down, across] = [cell.row - range.tl.nativeRow, cell.column - range.tl.nativeCol];
    // A picture of fixed size has no lower right corner.
    for (const corner of [range.tl, range.br as typeof range.br | undefined]) {
      if (corner === undefined) continue;
      corner.nativeRow += down;
      corner.nativeCol += across;
    }
  });
}

function writeView(target: Worksheet, { freeze, showGridlines }: Partial<IWorksheetData>): void {
  const [rows, columns] = [freeze?.ySplit ?? 0, freeze?.xSplit ?? 0];
  const common = { ...(target.views as Worksheet["views"] | null)?.[0], showGridLines: showGridlines !== no, topLeftCell: undefined };
  const split = rows > 0 || columns > 0 ? { state: "frozen", xSplit: columns, ySplit: rows } : { state: "normal", xSplit: undefined, ySplit: undefined };
  target.views = [{ ...common, ...split } as Worksheet["views"][number]];
}

function writePrint(target: Worksheet, print: PrintPlan | undefined): void {
  if (print === undefined) return;
  const { pageSetup } = target;
  pageSetup.orientation = print.orientation;
  pageSetup.fitToPage = print.fitToWidth;
  if (print.fitToWidth) {
    pageSetup.fitToWidth = 1;
    // As many pages long as it takes.
    pageSetup.fitToHeight = 0;
  }
  if (print.titleRows === undefined) Reflect.deleteProperty(pageSetup, "printTitlesRow");
  else pageSetup.printTitlesRow = `${print.titleRows.row + 1}:${print.titleRows.row + print.titleRows.rows}`;
  target.headerFooter = {
    ...target.headerFooter,
    ...(print.header !== undefined && { oddHeader: inTheMiddle(print.header) }),
    ...(print.footer !== undefined && { oddFooter: inTheMiddle(print.footer) }),
  };
  for (const row of print.breaksBefore) if (row > 0) target.getRow(row).addPageBreak();
}

function inTheMiddle(text: string): string {
  return /^&[LCR]/.test(text) ? text : `&C${text}`;
}

/** Makes a named table of cells that are written already. Where its header is no row of different texts it stays a range of cells. */
function writeTable(target: Worksheet, { name, area }: TablePlan, style: object | undefined): void {
  const valueAt = (row: number, column: number): CellValue => target.getCell(area.row + row + 1, area.column + column + 1).value;
  const headers = Array.from({ length: area.columns }, (_, column) => valueAt(0, column)).flatMap((header) => (typeof header === "string" && header !== "" ? [header] : []));
  if (area.rows < 2 || headers.length < area.columns || new Set(headers.map(foldSheetName)).size < area.columns) return;
  target.addTable({
    name,
    ref: cellAddress(area),
    headerRow: true,
    style: { theme: "TableStyleLight1", showRowStripes: true, ...style },
    columns: headers.map((header) => ({ name: header, filterButton: true })),
    // The library writes these into the cells: they are what stands there.
    rows: Array.from({ length: area.rows - 1 }, (_, row) => headers.map((_header, column) => valueAt(row + 1, column))),
  });
}
