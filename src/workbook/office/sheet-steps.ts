import { areaAddress, columnPoints, type Area, type Cell, type ConditionalFormat, type SheetPlan, type Validation } from "../../sheet";
import { cellInput, safeFormat } from "./cell-input";
import { formulaRuns } from "./formula-runs";
import { setUpPrint } from "./print-setup";
import { rangeOf } from "./range-of";
import { rowBlocks, stepBytes, type Step } from "./step";
import { areaSteps, styleSteps, type SheetStep } from "./style-steps";
import { validate } from "./validate";

/** Name a sheet has until the last of it is written: a failure on the way never leaves half a sheet under the name of a whole one. */
export const unfinishedName = "BAY unfinished";

/**
 * Lists the steps that write a whole new sheet, the name last.
 *
 * Number formats come before the values, values before tables and before what looks at them. `position` counts the tabs from 0.
 */
export function sheetSteps(plan: SheetPlan, position: number): Step[] {
  const width = Math.max(0, ...plan.rows.map((line) => line.length));
  const rows = plan.rows.map((line) => Array.from({ length: width }, (_, column): Cell => line[column] ?? {}));
  const steps: SheetStep[] = [
    ...cellSteps(rows, width, plan.styles),
    ...styleSteps(rows, plan.styles),
    ...sizeSteps(plan),
    ...(plan.merges ?? []).map((area) => step({ objects: 1, calls: 1 }, (sheet) => { rangeOf(sheet, area).merge(false); })),
    ...validationSteps(plan.validations ?? []),
    // The one added last wins over those before it; of the plan's the first does.
    ...[...(plan.conditionalFormats ?? [])].reverse().map((one) => conditionalStep(one, plan.styles)),
    ...(plan.tables ?? []).map(({ name, area }) =>
      step({ objects: 2, calls: 2 }, (sheet) => {
        const table = sheet.tables.add(areaAddress(area), true);
        table.name = name;
        table.style = "TableStyleLight1";
      }),
    ),
    step({ objects: 14 + (plan.print?.breaksBefore.length ?? 0), calls: 12 }, (sheet) => {
      if (plan.freeze !== undefined) freeze(sheet, plan.freeze);
      if (plan.print !== undefined) setUpPrint(sheet, plan.print, plan);
      if (plan.tabColor !== undefined) sheet.tabColor = plan.tabColor;
      sheet.position = position;
      sheet.name = plan.name;
    }),
  ];
  return [
    { bytes: stepBytes({ objects: 3, calls: 2 }), queue: ({ workbook }) => void workbook.worksheets.add(unfinishedName) },
    ...steps.map(({ bytes, queue }): Step => ({ bytes, queue: (request) => { queue(request.sheet(unfinishedName)); } })),
    { bytes: 0, queue: (request) => { request.forgetSheets(); } },
  ];
}

function step(cost: Parameters<typeof stepBytes>[0], queue: SheetStep["queue"]): SheetStep {
  return { bytes: stepBytes(cost), queue };
}

/** Writes formats and values; formulas that repeat a row above are copied from there. */
function cellSteps(rows: readonly (readonly Cell[])[], width: number, styles: SheetPlan["styles"]): SheetStep[] {
  if (width === 0) return [];
  const runs = formulaRuns(rows);
  const inputs = rows.map((line) => line.map((cell): ReturnType<typeof cellInput> | null => (isEmpty(cell) ? null : cellInput(cell))));
  for (const { row, column, rows: height, columns } of runs.flatMap(({ copies }) => copies)) {
    for (const line of inputs.slice(row, row + height)) line.fill(null, column, column + columns);
  }
  // A new sheet is General and empty all over: a null leaves it so.
  const formats = rows.map((line) => line.map((cell) => safeFormat(cell, (cell.style === undefined ? undefined : styles[cell.style]?.format) ?? "") || null));
  const blocks = rowBlocks(inputs).map(({ from, to, bytes }): SheetStep => ({
    bytes: stepBytes({ objects: 1, calls: 2, sent: formats.slice(from, to) }) + bytes,
    queue: (sheet) => {
      const range = rangeOf(sheet, { row: from, column: 0, rows: to - from, columns: width });
      range.numberFormat = formats.slice(from, to);
      range.formulas = inputs.slice(from, to);
    },
  }));
  const copies = runs.map(({ source, copies: areas }) =>
    step({ objects: 1 + areas.length, calls: areas.length, sent: areas.map(() => "Formulas") }, (sheet) => {
      const from = rangeOf(sheet, source);
      for (const area of areas) rangeOf(sheet, area).copyFrom(from, "Formulas");
    }),
  );
  return [...blocks, ...copies];
}

function isEmpty({ value, formula }: Cell): boolean {
  return formula === undefined && (value === undefined || value === null || value === "");
}

const sizeCost = { objects: 0, calls: 1 };

/** Widths, heights and hidden columns; columns and rows alike are set together. */
function sizeSteps(plan: SheetPlan): SheetStep[] {
  const steps: SheetStep[] = [];
  for (const [width, runs] of grouped(plan.columnWidths)) {
    if (width !== null) steps.push(...areaSteps(runs.map(({ from, to }) => columns(from, to)), sizeCost, (ranges) => { ranges.format.columnWidth = columnPoints(width); }));
  }
  const heights = Array.from({ length: Math.max(0, ...Object.keys(plan.rowHeights ?? {}).map((row) => Number(row) + 1)) }, (_, row) => plan.rowHeights?.[row] ?? null);
  for (const [points, runs] of grouped(heights)) {
    if (points !== null) steps.push(...areaSteps(runs.map(({ from, to }) => ({ row: from, column: 0, rows: to - from, columns: 1 })), sizeCost, (ranges) => { ranges.format.rowHeight = points; }));
  }
  const isHidden = Array.from({ length: Math.max(0, ...(plan.hiddenColumns ?? []).map((column) => column + 1)) }, (_, column) => plan.hiddenColumns?.includes(column) === true);
  for (const { from, to } of runsOfEqual(isHidden).filter(({ value }) => value)) {
    steps.push(step({ objects: 2, calls: 1 }, (sheet) => { rangeOf(sheet, columns(from, to)).getEntireColumn().columnHidden = true; }));
  }
  return steps;
}

function columns(from: number, to: number): Area {
  return { row: 0, column: from, rows: 1, columns: to - from };
}

/** Groups the runs of equal values of a list by their value. */
function grouped<T>(values: readonly T[]): Map<T, { from: number; to: number }[]> {
  const groups = new Map<T, { from: number; to: number }[]>();
  for (const { from, to, value } of runsOfEqual(values)) groups.set(value, [...(groups.get(value) ?? []), { from, to }]);
  return groups;
}

/** Cuts a list into runs of equal values; `to` is the place after the last. */
function runsOfEqual<T>(values: readonly T[]): { from: number; to: number; value: T }[] {
  const runs: { from: number; to: number; value: T }[] = [];
  values.forEach((value, index) => {
    const last = runs.at(-1);
    if (last?.value === value) last.to = index + 1;
    else runs.push({ from: index, to: index + 1, value });
  });
  return runs;
}

/** Validations that say the same are set together. */
function validationSteps(validations: readonly Validation[]): SheetStep[] {
  const alike = new Map<string, Validation[]>();
  for (const { area, ...rest } of validations) {
    const key = JSON.stringify(rest);
    alike.set(key, [...(alike.get(key) ?? []), { area, ...rest }]);
  }
  return [...alike.values()].flatMap((group) =>
    areaSteps(group.map(({ area }) => area), { objects: 1, calls: 3, sent: group[0] }, (ranges) => { validate(ranges.dataValidation, group[0]!); }),
  );
}

function conditionalStep({ area, formula, style }: ConditionalFormat, styles: SheetPlan["styles"]): SheetStep {
  return step({ objects: 8, calls: 5, sent: formula }, (sheet) => {
    const { custom } = rangeOf(sheet, area).conditionalFormats.add("Custom");
    custom.rule.formula = formula;
    const { fill, color, bold, italic } = styles[style] ?? {};
    if (fill !== undefined) custom.format.fill.color = fill;
    if (color !== undefined) custom.format.font.color = color;
    if (bold !== undefined) custom.format.font.bold = bold;
    if (italic !== undefined) custom.format.font.italic = italic;
  });
}

function freeze(sheet: Excel.Worksheet, { rows, columns: count }: { readonly rows: number; readonly columns: number }): void {
  if (rows > 0 && count > 0) sheet.freezePanes.freezeAt(rangeOf(sheet, { row: 0, column: 0, rows, columns: count }));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (count > 0) sheet.freezePanes.freezeColumns(count);
}
