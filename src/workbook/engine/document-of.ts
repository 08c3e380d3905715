import { DataValidationErrorStyle, type ICellData, type ISheetDataValidationRule, type IWorkbookData, type IWorksheetData } from "@univerjs/core";
import type { IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";
import { sheetSize, type Area } from "../../sheet";
import {
  cellAt, noPrintPlan, putCell, type CellGrid, type DocumentName, type DocumentSheet, type LineSetting, type Look, type Note, type TypingRule,
  type WorkbookDocument,
} from "../document/workbook-document";
import { keptLink } from "./cell-link";
import { formatOf } from "./engine-formats";
import { no, yes } from "./engine-values";
import { figureOf } from "./kept-figures";
import { hexColor, lookOfStyle } from "./look-style";
import { everySheet, lookId } from "./open-document";
import { givenHeight } from "./row-heights";
import { cellValue } from "./sheet-snapshot";
import { notesOf, type SheetNotes } from "./stored-notes";
import {
  columnCharacters, eachCell, extrasOf, findStyle, isFilteredRow, numbered, readResource, resourceNames, rowPoints, toArea, toTheEnd, type Spill, type StoredStyle, type StoredWorkbook,
} from "./stored-sheet";
import { piecesOf } from "./text-pieces";

/**
 * Turns a workbook of the engine into a document. `base` is the one it was opened from: cells that look as there keep the number of
 * their look, every other look comes behind those.
 */
export function documentOf({ data, spills }: StoredWorkbook, base: readonly Look[] = [{}]): WorkbookDocument {
  const looks = [...base];
  const known = new Map(base.map((_, place) => [lookId(place), place]));
  const byText = new Map<string, number>();
  const placeOf = (id: ICellData["s"]): number => {
    if (id === null || id === undefined) return 0;
    const place = typeof id === "string" ? known.get(id) : undefined;
    if (place !== undefined) return place;
    const style = findStyle(data.styles, id);
    if (style === undefined) return 0;
    const look = madeOf(style, base);
    const text = JSON.stringify(look);
    const found = byText.get(text) ?? looks.push(look) - 1;
    byText.set(text, found);
    if (typeof id === "string") known.set(id, found);
    return found;
  };
  const rules = resource<ISheetDataValidationRule[]>(data, resourceNames.validations);
  const formats = resource<IConditionFormattingRule[]>(data, resourceNames.conditionalFormats);
  const notes = resource<SheetNotes>(data, resourceNames.notes);
  const sheets = data.sheetOrder.flatMap((id): DocumentSheet[] => {
    const sheet = data.sheets[id];
    return sheet === undefined ? [] : [sheetOf(id, sheet, spills[id] ?? [], rules[id] ?? [], formats[id] ?? [], notesOf(notes[id] ?? {}), { list: looks, placeOf })];
  });
  return { sheets, looks, names: namesOf(data) };
}

/** A style that began as one of the file's is still based on it, so that what the engine cannot hold stays. */
function madeOf(style: StoredStyle, base: readonly Look[]): Look {
  const look = lookOfStyle(style);
  return style.look !== undefined && base[style.look] !== undefined ? { ...look, basedOn: style.look } : look;
}

function resource<T>(data: IWorkbookData, name: string): Record<string, T | undefined> {
  return (readResource(data, name) ?? {}) as Record<string, T | undefined>;
}

/** The looks of the document so far, and the place that the style of a cell has in them. */
interface Looks {
  readonly list: readonly Look[];
  readonly placeOf: (id: ICellData["s"]) => number;
}

function sheetOf(
  id: string,
  sheet: Partial<IWorksheetData>,
  spills: readonly Spill[],
  rules: readonly ISheetDataValidationRule[],
  formats: readonly IConditionFormattingRule[],
  notes: readonly Note[],
  looks: Looks,
): DocumentSheet {
  const extras = extrasOf(sheet);
  return {
    id,
    name: sheet.name ?? id,
    state: sheet.hidden === yes ? (extras.veryHidden === true ? "veryHidden" : "hidden") : "visible",
    tabColor: hexColor(sheet.tabColor),
    cells: cellsOf(sheet, spills, looks),
    rows: numbered(sheet.rowData).flatMap(([row, data]): LineSetting[] => {
      // A height that the sheet found for itself is left to the program that opens the file.
      const given = givenHeight(data, sheet.defaultRowHeight);
      const [size, hidden] = [given === undefined ? undefined : rowPoints(given), data.hd === yes || isFilteredRow(data) || undefined];
      const look = data.s === undefined || data.s === null ? undefined : looks.placeOf(data.s);
      return size === undefined && hidden === undefined && look === undefined ? [] : [{ first: row, last: row, size, hidden, look }];
    }),
    columns: numbered(sheet.columnData).flatMap(([column, { w, hd, s }]): LineSetting[] => {
      const look = s === undefined || s === null ? undefined : looks.placeOf(s);
      const setting: LineSetting = { first: column, last: column, size: w === undefined ? undefined : columnCharacters(w), hidden: hd === yes || undefined, look };
      return setting.size === undefined && setting.hidden === undefined && look === undefined ? [] : [setting];
    }),
    merges: [...(sheet.mergeData ?? []).map(toArea), ...(extras.wideMerges ?? [])],
    frozen: { rows: sheet.freeze?.ySplit ?? 0, columns: extras.frozenColumns ?? sheet.freeze?.xSplit ?? 0 },
    hidesGrid: sheet.showGridlines === no,
    zoom: zoomOf(sheet),
    isProtected: extras.protection !== undefined,
    typingRules: rules.flatMap((rule) => ruleOf(rule, sheet)),
    formats: formats.flatMap(formatOf),
    otherFormats: 0,
    tables: extras.tables ?? [],
    filters: extras.filters,
    print: extras.print ?? noPrintPlan,
    notes,
    drawings: extras.drawings ?? 0,
    moves: extras.moves,
  };
}

/** Percent at which a sheet is shown; nothing where it is neither larger nor smaller. */
function zoomOf(sheet: Partial<IWorksheetData>): number | undefined {
  // The engine has no other place for it yet.
  // eslint-disable-next-line @typescript-eslint/no-deprecated
  const percent = Math.round((sheet.zoomRatio ?? 1) * 100);
  return percent === 100 ? undefined : percent;
}

function cellsOf(sheet: Partial<IWorksheetData>, spills: readonly Spill[], looks: Looks): CellGrid {
  const cells: CellGrid = new Map();
  const spilledFrom = new Map<string, Area>(spills.map(({ area }) => [`${area.row} ${area.column}`, area]));
  // A cell that says nothing looks as its row or column does.
  const lineLook = (row: number, column: number) => looks.placeOf(sheet.rowData?.[row]?.s ?? sheet.columnData?.[column]?.s);
  eachCell(sheet, (stored, row, column) => {
    const formula = typeof stored.f === "string" && stored.f !== "" ? stored.f : undefined;
    const figure = formula === undefined ? null : figureOf(stored);
    const keepsFigure = figure !== null && (figure.verdict === "kept" || figure.verdict === "volatile");
    const value = figure?.verdict === "kept" ? figure.values![0]![0]! : cellValue(stored, formula !== undefined);
    const isBare = stored.s === undefined || stored.s === null;
    const look = isBare ? lineLook(row, column) : looks.placeOf(stored.s);
    const link = keptLink(stored);
    if (value === null && formula === undefined && link === undefined && (look === 0 || isBare)) return;
    const array = formula === undefined ? undefined : spilledFrom.get(`${row} ${column}`);
    const pieces = formula === undefined ? piecesOf(stored, looks.list[look]!) : undefined;
    const computed = formula === undefined ? {} : { formula, hasResult: true, ...(keepsFigure && { keepsFigure }) };
    const further = { ...(link !== undefined && { link }), ...(pieces !== undefined && { pieces }) };
    putCell(cells, row, column, { value, look, ...computed, ...further, ...(array !== undefined && { array, isDynamic: true }) });
  });
  for (const { area, values } of spills) {
    values.forEach((line, down) => {
      line.forEach((value, across) => {
        const [row, column] = [area.row + down, area.column + across];
        if (down > 0 || across > 0) putCell(cells, row, column, { value, look: cellAt(cells, row, column)?.look ?? 0 });
      });
    });
  }
  return cells;
}

/** An area that ends with the cells which the engine has, as it reaches to the end of the sheet. */
function areaToTheEnd(area: Area, { rowCount = 0, columnCount = 0 }: Partial<IWorksheetData>): Area {
  const rows = area.row + area.rows === rowCount ? sheetSize.rows - area.row : area.rows;
  return { ...area, rows, columns: area.column + area.columns === columnCount ? sheetSize.columns - area.column : area.columns };
}

function ruleOf(rule: ISheetDataValidationRule, sheet: Partial<IWorksheetData>): TypingRule[] {
  const type = rule.type === "listMultiple" ? "list" : rule.type;
  if (type !== "any" && type !== "list" && type !== "whole" && type !== "decimal" && type !== "date" && type !== "time" && type !== "textLength" && type !== "custom") return [];
  const formulas = [rule.formula1, rule.formula2].filter((formula) => formula !== undefined && formula !== "");
  return [
    {
      areas: rule.ranges.map(toArea).map((area) => (rule.uid.endsWith(toTheEnd) ? areaToTheEnd(area, sheet) : area)),
      type,
      // A list compares nothing; the engine gives it a comparison, and forgets it when it undoes.
      operator: type === "any" || type === "list" || type === "custom" ? undefined : (rule.operator ?? undefined),
      formulas: formulas.map(String),
      allowsBlank: rule.allowBlank ?? true,
      hidesArrow: (type === "list" && rule.showDropDown === false) || undefined,
      // What the engine turns away is refused, with words or without.
      refuses: rule.showErrorMessage !== false || rule.errorStyle === DataValidationErrorStyle.STOP,
      shows: rule.showInputMessage ?? rule.prompt !== undefined,
      weight: rule.errorStyle === DataValidationErrorStyle.WARNING ? "warning" : rule.errorStyle === DataValidationErrorStyle.INFO ? "information" : "stop",
      error: rule.error ?? undefined,
      errorTitle: rule.errorTitle ?? undefined,
      prompt: rule.prompt ?? undefined,
      promptTitle: rule.promptTitle ?? undefined,
    },
  ];
}

function namesOf(data: IWorkbookData): DocumentName[] {
  const names = resource<{ name: string; formulaOrRefString: string; localSheetId?: string; hidden?: boolean; comment?: string }>(data, resourceNames.names);
  return Object.values(names).flatMap((one): DocumentName[] => {
    if (one === undefined) return [];
    const { name, formulaOrRefString, localSheetId, hidden, comment } = one;
    return [{
      name, comment: comment === undefined || comment === "" ? undefined : comment, formula: formulaOrRefString,
      sheet: localSheetId === undefined || localSheetId === everySheet ? undefined : localSheetId, hidden: hidden === true ? true : undefined,
    }];
  });
}
