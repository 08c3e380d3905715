import {
  DataValidationErrorStyle, DataValidationOperator, DataValidationRenderMode,
  type ICellData, type ISheetDataValidationRule, type IWorkbookData, type IWorksheetData,
} from "@univerjs/core";
import { isError, isInArea, sheetSize, type Area, type CellValue } from "../../sheet";
import { areaOfFilter, isFiltering } from "../document/sheet-filter";
import { cellAt, type DocumentCell, type DocumentSheet, type LineSetting, type TypingRule, type WorkbookDocument } from "../document/workbook-document";
import { assembleWorkbook } from "./assemble-workbook";
import { openFormat } from "./engine-formats";
import { cellKind, no, yes } from "./engine-values";
import { styleOfLook } from "./look-style";
import type { Figure } from "./kept-figures";
import { freeze } from "./store-sheet";
import { storedNotes } from "./stored-notes";
import { columnPixels, numbered, resourceNames, rowPixels, toRange, toTheEnd, type SheetExtras, type StoredSheet, type StoredStyle } from "./stored-sheet";
import { storedPieces } from "./text-pieces";

/** The id under which cells of the engine name a look of the document. */
export const lookId = (look: number): string => `look${look}`;

/**
 * Turns a document into a workbook as the engine stores it, every formula with the result that the file has.
 *
 * Cells that a formula spilled into are left to be computed again; with `showsSpilled` they are cells like others. Without `keepsFigures` every
 * formula is the engine's to compute.
 */
export function openDocument({ sheets, looks, names }: WorkbookDocument, { showsSpilled = false, keepsFigures = true } = {}): IWorkbookData {
  const styles: Record<string, StoredStyle> = {};
  looks.forEach((look, place) => {
    const style = styleOfLook(look);
    // The look an unknown style is made of: what the engine cannot hold of it stays.
    if (place > 0 || Object.keys(style).length > 0) styles[lookId(place)] = { ...style, look: place };
  });
  const stored = sheets.map((sheet) => openSheet(sheet, styles, showsSpilled, keepsFigures));
  const engineNames = names.map(({ name, formula, sheet, hidden = false, comment = "" }, index) => {
    const id = `n${index}`;
    return [id, { id, name, formulaOrRefString: formula, comment, localSheetId: sheet ?? everySheet, hidden }];
  });
  return assembleWorkbook(stored, styles, {
    [resourceNames.names]: Object.fromEntries(engineNames) as object,
    [resourceNames.notes]: storedNotes(sheets),
  });
}

/** Where the engine knows a name on all sheets. */
export const everySheet = "AllDefaultWorkbook";

function openSheet(sheet: DocumentSheet, styles: Readonly<Record<string, StoredStyle>>, showsSpilled: boolean, keepsFigures: boolean): StoredSheet {
  const cellData: Record<number, Record<number, ICellData>> = {};
  let [rows, columns] = [0, 0];
  for (const [row, line] of sheet.cells) {
    const stored: Record<number, ICellData> = {};
    for (const [column, cell] of line) {
      stored[column] = openCell(cell, keepsFigures ? figureOf(sheet, cell) : undefined, styles);
      columns = Math.max(columns, column + 1);
    }
    cellData[row] = stored;
    rows = Math.max(rows, row + 1);
  }
  if (!showsSpilled) dropSpilled(sheet, cellData);
  const rowData: NonNullable<IWorksheetData["rowData"]> = {};
  const filtered = (sheet.filters ?? []).flatMap((filter) => (isFiltering(filter) ? (areaOfFilter(filter, sheet.tables) ?? []) : []));
  const isFiltered = (row: number) => filtered.some((area) => row > area.row && row < area.row + area.rows);
  for (const { first, last, size, hidden, look = 0 } of sheet.rows) {
    const style = styles[lookId(look)] === undefined || look === 0 ? {} : { s: lookId(look) };
    if (size === undefined && !hidden && style.s === undefined) continue;
    for (let row = first; row <= last; row += 1) {
      const outOfSight = !hidden ? {} : isFiltered(row) ? { custom: { isFiltered: true } } : { hd: yes };
      rowData[row] = { ...(size !== undefined && { h: rowPixels(size), ia: no }), ...outOfSight, ...style };
    }
    rows = Math.max(rows, last + 1);
  }
  const seen = sheet.columns.map(({ first, last }) => (last >= sheetSize.columns - 1 ? first : last) + 1);
  const columnCount = Math.min(sheetSize.columns, Math.max(26, Math.max(columns, ...seen) + 6));
  const rowCount = Math.min(sheetSize.rows, Math.max(200, rows + 50));
  const isWide = (area: Area) => area.row + area.rows > rowCount || area.column + area.columns > columnCount || area.rows * area.columns > mostMerged;
  const wideMerges = sheet.merges.filter(isWide);
  const extras: SheetExtras = {
    tables: [...sheet.tables],
    filters: sheet.filters,
    print: sheet.print,
    drawings: sheet.drawings,
    ...(sheet.isProtected && { protection: { sheet: true } }),
    ...(sheet.state === "veryHidden" && { veryHidden: true }),
    ...(wideMerges.length > 0 && { wideMerges }),
  };
  return {
    sheet: {
      id: sheet.id,
      name: sheet.name,
      tabColor: sheet.tabColor ?? "",
      hidden: sheet.state === "visible" ? no : yes,
      rowCount,
      columnCount,
      defaultColumnWidth: columnPixels(sheet.defaultWidth ?? 8.43),
      defaultRowHeight: rowPixels(sheet.defaultHeight ?? 15),
      cellData,
      rowData,
      columnData: openColumns(sheet.columns, columnCount, styles),
      mergeData: sheet.merges.filter((area) => !isWide(area)).map(toRange),
      freeze: freeze(sheet.frozen),
      showGridlines: sheet.hidesGrid ? no : yes,
      // The engine has no other place for it yet.
      // eslint-disable-next-line @typescript-eslint/no-deprecated
      zoomRatio: Math.min(4, Math.max(0.1, (sheet.zoom ?? 100) / 100)),
      custom: extras,
    },
    validations: sheet.typingRules.map((rule, index) => openRule(rule, index, { rowCount, columnCount })),
    conditionalFormats: sheet.formats.map((format, index) => openFormat(format, `c${index}`)),
  };
}

function openCell({ value, formula, look, link, pieces }: DocumentCell, figure: Figure | undefined, styles: Readonly<Record<string, StoredStyle>>): ICellData {
  const id = lookId(look);
  const { custom, ...stored } = engineValue(value, formula !== undefined);
  const further = { ...custom, ...(figure && { figure }), ...(link !== undefined && { link }) };
  return {
    ...(formula !== undefined && { f: formula }),
    ...stored,
    ...(pieces !== undefined && { p: storedPieces(pieces) }),
    ...(styles[id] !== undefined && { s: id }),
    ...(Object.keys(further).length > 0 && { custom: further }),
  };
}

/** What the file says that a formula answers. */
function figureOf({ cells }: DocumentSheet, { formula, hasResult, value, array }: DocumentCell): Figure | undefined {
  if (formula === undefined) return undefined;
  if (hasResult === false) return { formula, values: null };
  if (array === undefined || array.rows * array.columns > mostSpilled) return { formula, values: [[value]] };
  const values = Array.from({ length: array.rows }, (_, down) => Array.from({ length: array.columns }, (_line, across) => cellAt(cells, array.row + down, array.column + across)?.value ?? null));
  return { formula, values };
}

/** Most cells of one formula whose figures are kept beside it. */
const mostSpilled = 200_000;

/** Writes a value as the engine keeps it. An error without a formula is marked: text may look like one. */
export function engineValue(value: CellValue, isComputed: boolean): ICellData {
  if (value === null) return {};
  if (typeof value === "number") return { v: value, t: cellKind.number };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: cellKind.boolean };
  if (isError(value)) return { v: value.error, t: cellKind.text, ...(!isComputed && { custom: { errorValue: true } }) };
  return { v: value, t: cellKind.text };
}

/** Takes away what a formula spilled into other cells: it is spilled again when the workbook is computed. */
function dropSpilled({ cells }: DocumentSheet, cellData: Readonly<Record<number, Record<number, ICellData>>>): void {
  for (const [top, line] of cells) {
    for (const [left, { array }] of line) {
      if (array === undefined || array.rows * array.columns < 2) continue;
      for (const [row, stored] of rowsWithin(cellData, array)) {
        for (const [column, cell] of numbered(stored)) {
          if (!isInArea({ row, column }, array) || (row === top && column === left)) continue;
          if (cell.s === undefined) Reflect.deleteProperty(stored, column);
          else stored[column] = { s: cell.s };
        }
      }
    }
  }
}

/** Lists the rows of an area that hold anything: an area may be as large as the sheet. */
function rowsWithin(cellData: Readonly<Record<number, Record<number, ICellData>>>, { row, rows }: Area): (readonly [number, Record<number, ICellData>])[] {
  if (rows > mostSpilled) return numbered(cellData).filter(([at]) => at >= row && at < row + rows);
  return Array.from({ length: rows }, (_, down) => [row + down, cellData[row + down] ?? {}] as const);
}

function openColumns(columns: readonly LineSetting[], count: number, styles: Readonly<Record<string, StoredStyle>>): NonNullable<IWorksheetData["columnData"]> {
  const data: NonNullable<IWorksheetData["columnData"]> = {};
  for (const { first, last, size, hidden, look = 0 } of columns) {
    const style = look === 0 ? undefined : styles[lookId(look)];
    if (size === undefined && !hidden && style === undefined) continue;
    for (let column = first; column <= Math.min(last, count - 1); column += 1) {
      data[column] = { ...(size !== undefined && { w: columnPixels(size) }), ...(hidden && { hd: yes }), ...(style !== undefined && { s: lookId(look) }) };
    }
  }
  return data;
}

const weights = { information: DataValidationErrorStyle.INFO, stop: DataValidationErrorStyle.STOP, warning: DataValidationErrorStyle.WARNING } as const;
/** Comparisons by the names that files and the engine have in common. */
const operators: ReadonlyMap<string, DataValidationOperator> = new Map(Object.values(DataValidationOperator).map((one) => [one, one]));

/** Most cells of one merged area that the engine is given. */
const mostMerged = 1_000_000;

function openRule(rule: TypingRule, index: number, { rowCount, columnCount }: { readonly rowCount: number; readonly columnCount: number }): ISheetDataValidationRule {
  const reaches = rule.areas.some(({ row, column, rows, columns }) => row + rows > rowCount || column + columns > columnCount);
  return {
    uid: `v${index}${reaches ? toTheEnd : ""}`,
    ranges: rule.areas.map(toRange).map((range) => ({ ...range, endRow: Math.min(range.endRow, rowCount - 1), endColumn: Math.min(range.endColumn, columnCount - 1) })),
    type: rule.type,
    formula1: rule.formulas[0],
    // Of a list the engine would take a second formula for the colours of its entries; some programs write a 0 there.
    formula2: rule.type === "list" ? undefined : rule.formulas[1],
    // The engine would hold what is chosen from a list against a comparison too, and mark every entry as wrong.
    operator: rule.type === "any" || rule.type === "list" || rule.type === "custom" ? undefined : (operators.get(rule.operator ?? "") ?? DataValidationOperator.BETWEEN),
    allowBlank: rule.allowsBlank,
    showDropDown: rule.type === "list" && rule.hidesArrow !== true,
    // As spreadsheet programs show it: the text of the cell, and an arrow beside it.
    renderMode: DataValidationRenderMode.ARROW,
    showErrorMessage: rule.refuses,
    showInputMessage: rule.shows,
    error: rule.error,
    errorTitle: rule.errorTitle,
    // The engine turns away what a rule forbids whether it says so or not.
    errorStyle: rule.refuses ? weights[rule.weight] : DataValidationErrorStyle.WARNING,
    prompt: rule.prompt,
    promptTitle: rule.promptTitle,
    ...(rule.type === "date" && rule.formulas.some((formula) => formula.includes(":")) && { bizInfo: { showTime: true } }),
  };
}
