import { areaAddress, cellAddress, type Area, type Cell, type CellStyle, type PrintPlan, type SheetPlan, type Validation } from "../../sheet";
import { cellInput, safeFormat } from "./cell-input";
import { jsonBytes, rowBlocks, type Step } from "./step";
import { addressTexts, styleAreas } from "./style-areas";

/** Name a sheet has until the last of it is written: a failure on the way never leaves half a sheet under the name of a whole one. */
export const unfinishedName = "BAY unfinished";

/** About what one call to the host costs in a request, beside its values. */
const callBytes = 400;

/**
 * Lists the steps that write a whole new sheet, the name last.
 *
 * Number formats come before the values, values before tables and before what looks at them. `position` counts the tabs from 0.
 */
export function sheetSteps(plan: SheetPlan, position: number): Step[] {
  const width = Math.max(0, ...plan.rows.map((line) => line.length));
  const rows = plan.rows.map((line) => Array.from({ length: width }, (_, column): Cell => line[column] ?? {}));
  const step = (queue: (sheet: Excel.Worksheet) => void, bytes = callBytes): Step => ({
    bytes,
    queue: (context) => {
      queue(context.workbook.worksheets.getItem(unfinishedName));
    },
  });
  return [
    { bytes: callBytes, queue: ({ workbook }) => void workbook.worksheets.add(unfinishedName) },
    ...cellSteps(rows, width, plan.styles).map(({ bytes, queue }) => step(queue, bytes)),
    ...styleSteps(rows, plan.styles).map(({ bytes, queue }) => step(queue, bytes)),
    ...sizeSteps(plan).map((queue) => step(queue)),
    ...(plan.merges ?? []).map((area) => step((sheet) => { rangeOf(sheet, area).merge(false); })),
    ...(plan.validations ?? []).map((one) => step((sheet) => { validate(rangeOf(sheet, one.area), one); }, callBytes + jsonBytes(one))),
    ...(plan.conditionalFormats ?? []).map(({ area, formula, style }) =>
      step((sheet) => {
        const { custom } = rangeOf(sheet, area).conditionalFormats.add("Custom");
        custom.rule.formula = formula;
        const { fill, color, bold, italic } = plan.styles[style] ?? {};
        if (fill !== undefined) custom.format.fill.color = fill;
        if (color !== undefined) custom.format.font.color = color;
        if (bold !== undefined) custom.format.font.bold = bold;
        if (italic !== undefined) custom.format.font.italic = italic;
      }, 3 * callBytes),
    ),
    ...(plan.tables ?? []).map(({ name, area }) =>
      step((sheet) => {
        const table = sheet.tables.add(areaAddress(area), true);
        table.name = name;
        table.style = "TableStyleLight1";
      }),
    ),
    step((sheet) => {
      if (plan.freeze !== undefined) freeze(sheet, plan.freeze);
      if (plan.print !== undefined) setUpPrint(sheet, plan.print);
      if (plan.tabColor !== undefined) sheet.tabColor = plan.tabColor;
      sheet.position = position;
      sheet.name = plan.name;
    }, 12 * callBytes + (plan.print?.breaksBefore.length ?? 0) * callBytes),
  ];
}

interface SheetStep {
  readonly bytes: number;
  readonly queue: (sheet: Excel.Worksheet) => void;
}

function cellSteps(rows: readonly (readonly Cell[])[], width: number, styles: SheetPlan["styles"]): SheetStep[] {
  if (width === 0) return [];
  const inputs = rows.map((line) => line.map(cellInput));
  const formats = rows.map((line) => line.map((cell) => safeFormat(cell, (cell.style === undefined ? undefined : styles[cell.style]?.format) ?? "General")));
  return rowBlocks(inputs).map(({ from, to, bytes }) => ({
    bytes: bytes + jsonBytes(formats.slice(from, to)) + 2 * callBytes,
    queue: (sheet) => {
      const range = sheet.getRangeByIndexes(from, 0, to - from, width);
      range.numberFormat = formats.slice(from, to);
      range.formulas = inputs.slice(from, to);
    },
  }));
}

function styleSteps(rows: readonly (readonly Cell[])[], styles: SheetPlan["styles"]): SheetStep[] {
  return [...styleAreas(rows)].flatMap(([name, areas]) => {
    const style = styles[name];
    if (style === undefined) return [];
    return addressTexts(areas).map((address) => ({
      bytes: address.length + 10 * callBytes,
      queue: (sheet: Excel.Worksheet) => {
        applyStyle(sheet.getRanges(address).format, style);
      },
    }));
  });
}

function applyStyle(format: Excel.RangeFormat, style: CellStyle): void {
  if (style.bold !== undefined) format.font.bold = style.bold;
  if (style.italic !== undefined) format.font.italic = style.italic;
  if (style.color !== undefined) format.font.color = style.color;
  if (style.fontSize !== undefined) format.font.size = style.fontSize;
  if (style.fill !== undefined) format.fill.color = style.fill;
  if (style.wrap !== undefined) format.wrapText = style.wrap;
  if (style.align !== undefined) format.horizontalAlignment = horizontal[style.align];
  if (style.vertical !== undefined) format.verticalAlignment = vertical[style.vertical];
  if (style.locked !== undefined) format.protection.locked = style.locked;
  for (const side of style.border === undefined ? [] : sides[style.border]) {
    const border = format.borders.getItem(side);
    border.style = "Continuous";
    border.weight = "Thin";
    if (style.borderColor !== undefined) border.color = style.borderColor;
  }
}

const horizontal = { left: "Left", center: "Center", right: "Right" } as const;
const vertical = { top: "Top", middle: "Center", bottom: "Bottom" } as const;
const sides = {
  all: ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"],
  bottom: ["EdgeBottom", "InsideHorizontal"],
} as const;

/** Widths, heights and hidden columns; neighbours of equal width are set together. */
function sizeSteps(plan: SheetPlan): ((sheet: Excel.Worksheet) => void)[] {
  const steps: ((sheet: Excel.Worksheet) => void)[] = [];
  let from = 0;
  plan.columnWidths.forEach((width, column) => {
    if (plan.columnWidths[column + 1] === width) return;
    const first = from;
    from = column + 1;
    if (width !== null) steps.push((sheet) => { sheet.getRangeByIndexes(0, first, 1, column + 1 - first).format.columnWidth = columnPoints(width); });
  });
  for (const [row, points] of Object.entries(plan.rowHeights ?? {})) {
    steps.push((sheet) => { sheet.getRangeByIndexes(Number(row), 0, 1, 1).format.rowHeight = points; });
  }
  for (const column of plan.hiddenColumns ?? []) {
    steps.push((sheet) => { sheet.getRangeByIndexes(0, column, 1, 1).getEntireColumn().columnHidden = true; });
  }
  return steps;
}

/** Turns a width in characters of the default font into points: 7 pixels a character and 5 beside them, at 96 pixels an inch. */
function columnPoints(characters: number): number {
  return Math.round(characters * 7 + 5) * 0.75;
}

function validate(range: Excel.Range, { rule, message, strict }: Validation): void {
  range.dataValidation.rule = validationRule(rule);
  range.dataValidation.ignoreBlanks = true;
  range.dataValidation.errorAlert = { title: "Please check", message: message.slice(0, 255), showAlert: true, style: strict ? "Stop" : "Warning" };
}

function validationRule(rule: Validation["rule"]): Excel.DataValidationRule {
  switch (rule.kind) {
    case "list":
      return { list: { inCellDropDown: true, source: rule.items.join(",") } };
    case "list-of":
      return { list: { inCellDropDown: true, source: rule.formula } };
    case "date":
      return { date: { formula1: "1900-01-01", operator: "GreaterThanOrEqualTo" } };
    case "number":
      return { decimal: bounds(rule) };
    case "whole":
      return { wholeNumber: bounds(rule) };
  }
}

const extreme = 1e15;

function bounds({ least, most }: { readonly least?: number; readonly most?: number }): Excel.BasicDataValidation {
  return { formula1: least ?? -extreme, formula2: most ?? extreme, operator: "Between" };
}

function freeze(sheet: Excel.Worksheet, { rows, columns }: { readonly rows: number; readonly columns: number }): void {
  if (rows > 0 && columns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (columns > 0) sheet.freezePanes.freezeColumns(columns);
}

function setUpPrint(sheet: Excel.Worksheet, plan: PrintPlan): void {
  const layout = sheet.pageLayout;
  layout.orientation = plan.orientation === "landscape" ? "Landscape" : "Portrait";
  if (plan.fitToWidth) layout.zoom = { horizontalFitToPages: 1 };
  if (plan.titleRows !== undefined) layout.setPrintTitleRows(`$${plan.titleRows.row + 1}:$${plan.titleRows.row + plan.titleRows.rows}`);
  if (plan.header !== undefined) layout.headersFooters.defaultForAllPages.centerHeader = plan.header;
  if (plan.footer !== undefined) layout.headersFooters.defaultForAllPages.centerFooter = plan.footer;
  for (const row of plan.breaksBefore) sheet.horizontalPageBreaks.add(cellAddress({ row, column: 0 }));
}

/** The range of an area on a sheet. */
export function rangeOf(sheet: Excel.Worksheet, { row, column, rows, columns }: Area): Excel.Range {
  return sheet.getRangeByIndexes(row, column, rows, columns);
}
