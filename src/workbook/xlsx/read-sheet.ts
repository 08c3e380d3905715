import type { ICellData, IWorksheetData } from "@univerjs/core";
import type { Cell, CellValue, HeaderFooter, Style, Worksheet } from "exceljs";
import { cellAddress, dayOfInstant, parseAreas, type PrintPlan, type TablePlan } from "../../sheet";
import { freeze } from "../engine/store-sheet";
import { cellKind, no, yes } from "../engine/engine-values";
import { columnPixels, rowPixels, toRange, type SheetExtras, type StoredSheet, type StoredStyle } from "../engine/stored-sheet";
import { readStyle, type ReadColor } from "./cell-styles";
import type { PackagedSheet } from "./file-package";
import { readFormatRules } from "./format-rules";
import { fromFileFormula } from "./formula-text";
import { insideOf, storedCells, storedNote, storedRows, tablesOf } from "./library-parts";
import { readValidations } from "./validation-rules";
import { element, elements } from "./xml-scan";

/** Keeps a style for the whole workbook and answers with its id. */
export type KeepStyle = (style: StoredStyle) => string | undefined;

/** Reads one sheet of a file. Cells that a formula spilled into are left to be computed again, unless `spilled` asks for them. */
export function readSheet(source: Worksheet, packaged: PackagedSheet, id: string, readColor: ReadColor, keep: KeepStyle, spilled: boolean): StoredSheet {
  const styleIds = new Map<Partial<Style>, string | undefined>();
  const styleOf = (style: Partial<Style> | undefined): string | undefined => {
    if (style === undefined) return undefined;
    if (!styleIds.has(style)) styleIds.set(style, keep(readStyle(style, readColor)));
    return styleIds.get(style);
  };
  const { cellData, notes, rowData } = readRows(source, styleOf);
  if (!spilled) dropSpilled(source, cellData);
  const known = new Set(notes.map(cellAddress));
  for (const [address, note] of packaged.notes) {
    const cell = parseAreas(address)[0];
    if (cell !== undefined && !known.has(address)) notes.push({ row: cell.row, column: cell.column, note });
  }
  const formats = readFormatRules(source, readColor);
  const rows = Object.keys(rowData).length === 0 && Object.keys(cellData).length === 0 ? 0 : Math.max(...[...Object.keys(cellData), ...Object.keys(rowData)].map(Number)) + 1;
  const columns = Math.max(source.columnCount, insideOf(source).columns?.length ?? 0);
  // Null where a file has none, against the library's types.
  const view = (source.views as Worksheet["views"] | null)?.[0];
  const frozen = view?.state === "frozen" ? { rows: view.ySplit ?? 0, columns: view.xSplit ?? 0 } : undefined;
  const protection = insideOf(source).sheetProtection;
  const extras: SheetExtras = {
    fileSheet: source.name,
    tables: readTables(source),
    print: readPrint(source, packaged.xml),
    notes,
    drawings: packaged.drawings,
    pictures: source.getImages().map(({ range }) => ({ row: range.tl.nativeRow, column: range.tl.nativeCol })),
    lostDrawings: packaged.lostDrawings,
    ...(protection && { protection }),
    ...(source.state === "veryHidden" && { veryHidden: true }),
    ...(formats.others.length > 0 && { otherFormats: [...formats.others] }),
  };
  return {
    sheet: {
      id,
      name: source.name,
      tabColor: readColor(source.properties.tabColor) ?? "",
      hidden: source.state === "visible" ? no : yes,
      rowCount: Math.max(rows + 50, 200),
      columnCount: Math.max(columns + 6, 26),
      defaultColumnWidth: columnPixels(source.properties.defaultColWidth ?? 8.43),
      defaultRowHeight: rowPixels(source.properties.defaultRowHeight || 15),
      cellData,
      rowData,
      columnData: readColumns(source, styleOf),
      mergeData: source.model.merges.flatMap((merge) => parseAreas(merge).map(toRange)),
      freeze: freeze(frozen),
      showGridlines: view?.showGridLines === false ? no : yes,
      custom: extras,
    },
    validations: readValidations(packaged.xml),
    conditionalFormats: formats.rules,
  };
}

interface Rows {
  readonly cellData: Record<number, Record<number, ICellData>>;
  readonly rowData: NonNullable<IWorksheetData["rowData"]>;
  readonly notes: NonNullable<SheetExtras["notes"]>;
}

function readRows(source: Worksheet, styleOf: (style: Partial<Style> | undefined) => string | undefined): Rows {
  const cellData: Rows["cellData"] = {};
  const rowData: Rows["rowData"] = {};
  const notes: Rows["notes"] = [];
  for (const row of storedRows(source)) {
    const number = row.number;
    if (row.height || row.hidden) rowData[number - 1] = { ...(row.height && { h: rowPixels(row.height), ia: no }), ...(row.hidden && { hd: yes }) };
    const line: Record<number, ICellData> = {};
    for (const cell of storedCells(row)) {
      const column = Number(cell.col) - 1;
      const style = styleOf(cell.style);
      const stored: ICellData = cell.isMerged && cell.master !== cell ? {} : readCell(cell);
      if (style !== undefined) stored.s = style;
      if (Object.keys(stored).length > 0) line[column] = stored;
      const note = storedNote(cell);
      if (note !== undefined) notes.push({ row: number - 1, column, note });
    }
    if (Object.keys(line).length > 0) cellData[number - 1] = line;
  }
  return { cellData, rowData, notes };
}

function readCell(cell: Cell): ICellData {
  const value = cell.value;
  if (value !== null && typeof value === "object" && ("formula" in value || "sharedFormula" in value)) {
    return { f: fromFileFormula(cell.formula), ...readValue(cell.result) };
  }
  return readValue(value);
}

function readValue(value: CellValue | undefined): ICellData {
  if (value === null || value === undefined || value === "") return {};
  if (typeof value === "number") return { v: value, t: cellKind.number };
  if (typeof value === "string") return { v: value, t: cellKind.text };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: cellKind.boolean };
  if (value instanceof Date) return { v: Math.round(dayOfInstant(value) * 1e9) / 1e9, t: cellKind.number };
  if ("error" in value) return { v: value.error, t: cellKind.text, custom: { errorValue: true } };
  if ("richText" in value) return { v: value.richText.map(({ text }) => text).join(""), t: cellKind.text, custom: { richText: value.richText } };
  if ("hyperlink" in value) {
    const shown = readValue(value.text);
    return { ...shown, custom: { ...shown.custom, link: value.hyperlink } };
  }
  return {};
}

/** Takes away what a formula spilled into other cells: it is spilled again when the workbook is computed. */
function dropSpilled(source: Worksheet, cellData: Rows["cellData"]): void {
  for (const row of storedRows(source)) {
    for (const cell of storedCells(row)) {
      const { shareType, ref } = (cell.value ?? {}) as { shareType?: string; ref?: string };
      if (shareType !== "array" || ref === undefined) continue;
      for (const { row: first, column, rows, columns } of parseAreas(ref)) {
        for (let down = first; down < first + rows; down += 1) {
          for (let across = column; across < column + columns; across += 1) {
            const stored = cellData[down]?.[across];
            if (stored === undefined || (down === first && across === column)) continue;
            if (stored.s === undefined || stored.s === null) Reflect.deleteProperty(cellData[down]!, across);
            else cellData[down]![across] = { s: stored.s };
          }
        }
      }
    }
  }
}

function readColumns(source: Worksheet, styleOf: (style: Partial<Style> | undefined) => string | undefined): NonNullable<IWorksheetData["columnData"]> {
  const data: NonNullable<IWorksheetData["columnData"]> = {};
  insideOf(source).columns?.forEach((column, index) => {
    const style = styleOf(column.style);
    const one = { ...(column.width !== undefined && { w: columnPixels(column.width) }), ...(column.hidden && { hd: yes }), ...(style !== undefined && { s: style }) };
    if (Object.keys(one).length > 0) data[index] = one;
  });
  return data;
}

function readTables(source: Worksheet): TablePlan[] {
  return tablesOf(source).flatMap(({ name, tableRef }) => {
    const area = parseAreas(tableRef)[0];
    return area === undefined ? [] : [{ name, area }];
  });
}

function readPrint(source: Worksheet, xml: string): PrintPlan {
  const { pageSetup } = source;
  const headerFooter = source.headerFooter as Partial<HeaderFooter> | null;
  const titles = /^(\d+):(\d+)$/.exec(pageSetup.printTitlesRow ?? "");
  const [header, footer] = [headerFooter?.oddHeader, headerFooter?.oddFooter];
  return {
    orientation: pageSetup.orientation === "landscape" ? "landscape" : "portrait",
    fitToWidth: pageSetup.fitToPage === true && pageSetup.fitToWidth === 1,
    ...(titles !== null && { titleRows: { row: Number(titles[1]) - 1, rows: Number(titles[2]) - Number(titles[1]) + 1 } }),
    ...(header && { header: centred(header) }),
    ...(footer && { footer: centred(footer) }),
    breaksBefore: [...elements(element(xml, "rowBreaks")?.inner ?? "", "brk")].map(({ attributes }) => Number(attributes["id"])),
  };
}

/** Takes off the code for the middle of the page where a header has nothing else. */
function centred(text: string): string {
  return text.startsWith("&C") && !/&[LR]/.test(text) ? text.slice(2) : text;
}
