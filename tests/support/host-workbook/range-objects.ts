import { areaAddress, parseAreas, quoteSheetName, sheetSize, type Area, type CellValue } from "../../../src/sheet";
import { numberIn, oneOf, Refusal, settable, text, truth, type HostObject, type Settable } from "./host-object";
import type { HostSheet } from "./host-sheet";
import type { HostState } from "./host-state";
import { movedFormula } from "./moved-formula";

/** Cells one call may read or write, as the host's published limits give them. */
const mostCells = 5_000_000;
/** Longest list of areas that the host takes without fail, in characters. */
const longestAreas = 8_000;
/** Longest list of choices that is given by its items, in characters. */
const longestList = 255;

const color = (value: unknown) => {
  if (!/^#[0-9a-f]{6}$/i.test(text(value))) throw new Refusal("InvalidArgument");
};

const font: Settable = { type: "RangeFont", set: { bold: truth, italic: truth, color, size: (value) => numberIn(value, 1, 409) } };
const border: Settable = {
  type: "RangeBorder",
  set: { style: (value) => oneOf(value, ["None", "Continuous", "Dash", "Dot", "Double"]), weight: (value) => oneOf(value, ["Hairline", "Thin", "Medium", "Thick"]), color },
};
const format: Settable = {
  type: "RangeFormat",
  set: {
    wrapText: truth,
    horizontalAlignment: (value) => oneOf(value, ["General", "Left", "Center", "Right", "Fill", "Justify"]),
    verticalAlignment: (value) => oneOf(value, ["Top", "Center", "Bottom", "Justify"]),
    columnWidth: (value) => numberIn(value, 0, 1_343),
    rowHeight: (value) => numberIn(value, 0, 409.5),
  },
  parts: {
    font,
    fill: { type: "RangeFill", set: { color } },
    protection: { type: "FormatProtection", set: { locked: truth } },
    borders: { type: "RangeBorderCollection", set: {}, items: { names: ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"], each: border } },
  },
};
const validation: Settable = {
  type: "DataValidation",
  set: {
    rule: (value) => {
      const { list, ...others } = value as { readonly list?: { readonly source: unknown } };
      if (Object.keys(others).length + (list === undefined ? 0 : 1) !== 1) throw new Refusal("InvalidArgument");
      if (list !== undefined && !text(list.source).startsWith("=") && text(list.source).length > longestList) throw new Refusal("InvalidArgument");
    },
    ignoreBlanks: truth,
    errorAlert: (value) => {
      const alert = value as { readonly title: unknown; readonly message: unknown; readonly style: unknown };
      if (text(alert.title).length > 32 || text(alert.message).length > 255) throw new Refusal("InvalidArgument");
      oneOf(alert.style, ["Stop", "Warning", "Information"]);
    },
  },
};
const conditional: Settable = {
  type: "CustomConditionalFormat",
  set: {},
  parts: {
    rule: { type: "ConditionalFormatRule", set: { formula: (value) => { if (!text(value).startsWith("=")) throw new Refusal("InvalidArgument"); } } },
    format: {
      type: "ConditionalRangeFormat",
      set: {},
      parts: { fill: { type: "ConditionalRangeFill", set: { color } }, font: { type: "ConditionalRangeFont", set: { bold: truth, italic: truth, color } } },
    },
  },
};

export interface Place {
  readonly sheet: HostSheet;
  readonly area: Area;
}

/** Reads the range that was handed to a method. */
export function placeGiven(value: unknown): Place {
  return (value as HostObject).place as Place;
}

/** Reads four numbers of `getRangeByIndexes` as an area of a sheet. */
export function areaGiven([row, column, rows, columns]: readonly unknown[]): Area {
  const first = { row: numberIn(row, 0, sheetSize.rows - 1), column: numberIn(column, 0, sheetSize.columns - 1) };
  const area = { ...first, rows: numberIn(rows, 1, sheetSize.rows), columns: numberIn(columns, 1, sheetSize.columns) };
  if (area.row + area.rows > sheetSize.rows || area.column + area.columns > sheetSize.columns) throw new Refusal("InvalidArgument");
  return area;
}

/** A range of the workbook. */
export function rangeObject(state: HostState, place: Place): HostObject {
  const { sheet, area } = place;
  const within = () => {
    if (!state.sheets.includes(sheet)) throw new Refusal("ItemNotFound");
    if (area.rows * area.columns > mostCells) throw new Refusal("OperationCellsExceedLimit");
  };
  const grid = (of: (row: number, column: number) => unknown) => {
    within();
    return Array.from({ length: area.rows }, (_, row) => Array.from({ length: area.columns }, (__, column) => of(area.row + row, area.column + column)));
  };
  const fill = (set: (row: number, column: number, value: unknown) => void) => (values: unknown) => {
    within();
    if (sheet.protected) throw new Refusal("AccessDenied");
    if (!Array.isArray(values)) {
      // One value for all cells.
      for (let row = 0; row < area.rows; row += 1) for (let column = 0; column < area.columns; column += 1) set(area.row + row, area.column + column, values);
      return;
    }
    if (values.length !== area.rows || values.some((line: unknown) => !Array.isArray(line) || line.length !== area.columns)) throw new Refusal("InvalidArgument");
    (values as unknown[][]).forEach((line, y) => {
      line.forEach((value, x) => {
        // A null leaves the cell as it is.
        if (value !== null) set(area.row + y, area.column + x, value);
      });
    });
  };
  const note = noteOn(sheet, areaAddress(area));
  const part = (rows: Partial<Area>) => rangeObject(state, { sheet, area: { ...area, ...rows } });
  return {
    type: "Range",
    place,
    reads: {
      rowIndex: () => area.row,
      columnIndex: () => area.column,
      rowCount: () => area.rows,
      columnCount: () => area.columns,
      address: () => `${quoteSheetName(sheet.name)}!${areaAddress(area)}`,
      values: () => grid((row, column) => plain(sheet.value(row, column))),
      valueTypes: () => grid((row, column) => typeOf(sheet.value(row, column))),
      formulas: () => grid((row, column) => sheet.formula(row, column) ?? (state.repeatsSpilled ? sheet.spilledFormula(row, column) : null) ?? plain(sheet.value(row, column))),
      numberFormat: () => grid((row, column) => sheet.format(row, column)),
      text: () => grid((row, column) => shown(sheet.value(row, column), sheet.format(row, column))),
    },
    writes: {
      values: fill((row, column, value) => { sheet.enter(row, column, input(value)); }),
      formulas: fill((row, column, value) => { sheet.enter(row, column, input(value)); }),
      numberFormat: fill((row, column, value) => { sheet.setFormat(row, column, text(value)); }),
      columnHidden: (value) => { note("columnHidden", truth(value)); },
    },
    parts: {
      worksheet: () => ({ type: "Worksheet", reads: { name: () => sheet.name } }),
      format: () => settable(format, (property, value) => { note(`format.${property}`, value); }, (property) => setOn(sheet, areaAddress(area), `format.${property}`)),
      dataValidation: () => settable(validation, (property, value) => { note(`dataValidation.${property}`, value); }, (property) => setOn(sheet, areaAddress(area), `dataValidation.${property}`)),
      conditionalFormats: () => ({
        type: "ConditionalFormatCollection",
        parts: { add: (kind) => addConditional(sheet, area, kind), getItemAt: (index) => conditionalAt(sheet, area, numberIn(index, 0, sheet.conditionalFormats.length - 1)) },
      }),
      getEntireColumn: () => part({ row: 0, rows: sheetSize.rows }),
      getRow: (row) => part({ row: area.row + numberIn(row, 0, area.rows - 1), rows: 1 }),
      getBoundingRect: (other) => part({ rows: placeGiven(other).area.row + placeGiven(other).area.rows - area.row }),
      getSpillingToRange: () => {
        const spill = sheet.spill(area.row, area.column);
        if (spill === null) throw new Refusal("ItemNotFound");
        return rangeObject(state, { sheet, area: spill });
      },
      getSpillingToRangeOrNullObject: () => {
        const spill = sheet.spill(area.row, area.column);
        return spill === null ? null : rangeObject(state, { sheet, area: spill });
      },
    },
    calls: {
      _ValidateArraySize: (rows, columns) => { if (rows !== area.rows || columns !== area.columns) throw new Refusal("InvalidArgument"); },
      copyFrom: (source, kind) => {
        const what = oneOf(kind, ["Formulas", "Values"]);
        within();
        const from = typeof source === "string" ? { sheet, area: parseAreas(source)[0] ?? area } : placeGiven(source);
        copyCells(from, place, what);
      },
      merge: () => { sheet.merge(area); },
      select: () => {
        if (sheet.visibility !== "Visible") throw new Refusal("InvalidOperation");
        state.selected = place;
      },
    },
  };
}

/** Several areas of one sheet, as `getRanges` gives them. */
export function rangeAreasObject(sheet: HostSheet, address: unknown): HostObject {
  const list = text(address);
  if (list.length > longestAreas || list.split(",").some((one) => parseAreas(one).length !== 1)) throw new Refusal("InvalidArgument");
  const note = noteOn(sheet, list);
  return {
    type: "RangeAreas",
    parts: {
      format: () => settable(format, (property, value) => { note(`format.${property}`, value); }),
      dataValidation: () => settable(validation, (property, value) => { note(`dataValidation.${property}`, value); }),
    },
  };
}

/**
 * Copies as the host does: what is copied is repeated over a larger target and goes over the edge of a smaller one, and what is relative in
 * formulas goes along.
 */
function copyCells(from: Place, to: Place, what: "Formulas" | "Values"): void {
  const area = { ...to.area, rows: Math.max(to.area.rows, from.area.rows), columns: Math.max(to.area.columns, from.area.columns) };
  if (area.rows % from.area.rows !== 0 || area.columns % from.area.columns !== 0) throw new Refusal("InvalidArgument");
  const inputs = Array.from({ length: area.rows * area.columns }, (_, index) => {
    const [down, right] = [Math.floor(index / area.columns), index % area.columns];
    const source = { row: from.area.row + (down % from.area.rows), column: from.area.column + (right % from.area.columns) };
    const target = { row: area.row + down, column: area.column + right };
    const formula = what === "Values" ? null : from.sheet.formula(source.row, source.column);
    return { target, copied: formula === null ? plain(from.sheet.value(source.row, source.column)) : movedFormula(formula, source, target) };
  });
  for (const { target, copied } of inputs) to.sheet.enter(target.row, target.column, copied);
}

function noteOn(sheet: HostSheet, address: string): (property: string, value: unknown) => void {
  return (property, value) => {
    if (sheet.protected) throw new Refusal("AccessDenied");
    sheet.settings.push({ address, property, value });
  };
}

/** What was set last of a property of an area; null where nothing was. */
export function setOn(sheet: HostSheet, address: string, property: string): unknown {
  return sheet.settings.filter((one) => one.address === address && one.property === property).at(-1)?.value ?? null;
}

/** Shows a value as a cell does in the few formats that are asked for. */
function shown(value: CellValue, format: string): string {
  const percent = /^0(\.(0+))?%$/.exec(format);
  return percent !== null && typeof value === "number" ? `${(100 * value).toFixed(percent[2]?.length ?? 0)}%` : String(plain(value));
}

function addConditional(sheet: HostSheet, area: Area, kind: unknown): HostObject {
  if (sheet.protected) throw new Refusal("AccessDenied");
  oneOf(kind, ["Custom"]);
  const settings = new Map<string, unknown>();
  sheet.conditionalFormats.unshift({ area, settings });
  return conditionalObject(settings);
}

function conditionalAt(sheet: HostSheet, area: Area, index: number): HostObject {
  const { settings } = sheet.conditionalFormats.filter((one) => areaAddress(one.area) === areaAddress(area))[index]!;
  return conditionalObject(settings);
}

function conditionalObject(settings: Map<string, unknown>): HostObject {
  return { type: "ConditionalFormat", parts: { custom: () => settable(conditional, (property, value) => { settings.set(property, value); }, (property) => settings.get(property)) } };
}

function input(value: unknown): string | number | boolean {
  if (typeof value !== "string" && typeof value !== "number" && typeof value !== "boolean") throw new Refusal("InvalidArgument");
  return value;
}

function plain(value: CellValue): string | number | boolean {
  return value === null ? "" : typeof value === "object" ? value.error : value;
}

function typeOf(value: CellValue): string {
  if (value === null) return "Empty";
  if (typeof value === "object") return "Error";
  return typeof value === "string" ? "String" : typeof value === "boolean" ? "Boolean" : "Double";
}
