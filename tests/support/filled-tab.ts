import { buildJob, jobsOf, readCommissioningPlan } from "../../src/planning/commissioning/build";
import { readTab, type TabReading } from "../../src/planning/commissioning/tab";
import { twinCells } from "../../src/planning/commissioning/tab/twin-cells";
import type { CellBlock, CellValue, SheetSnapshot } from "../../src/sheet";
import { jobName, moment, planWorkbook, smallPlan } from "./commissioning-plan";
import { tabSheet } from "./tab-workbook";

/** A cell that is written: its value, and its formula where it has one. */
export type Written = readonly [row: number, column: number, value: CellValue, formula?: string];

/** The small plan's tab, or another one's, as a spreadsheet program shows it, with nothing typed into it. */
export function builtTab(rows = smallPlan()): SheetSnapshot {
  const source = readCommissioningPlan(planWorkbook(rows));
  return computed(tabSheet(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab, jobName));
}

/** Writes cells of a sheet; it grows where they are outside. */
export function withCells(sheet: SheetSnapshot, ...cells: readonly Written[]): SheetSnapshot {
  const values = sheet.values.map((line) => [...line]);
  const formulas = sheet.formulas.map((line) => [...line]);
  for (const [row, column, value, formula = null] of cells) {
    while (values.length <= row) values.push([]);
    while (formulas.length <= row) formulas.push([]);
    while (values[row]!.length <= column) values[row]!.push(null);
    while (formulas[row]!.length <= column) formulas[row]!.push(null);
    values[row]![column] = value;
    formulas[row]![column] = formula;
  }
  return { ...sheet, values, formulas };
}

/** Writes blocks of cells, as a port does; a null leaves a cell alone. */
export function withBlocks(sheet: SheetSnapshot, blocks: readonly CellBlock[]): SheetSnapshot {
  const cells = blocks.flatMap(({ row, column, cells: lines }) =>
    lines.flatMap((line, down) => line.flatMap((cell, right): Written[] => (cell === null ? [] : [[row + down, column + right, cell.value ?? null]]))));
  return withCells(sheet, ...cells);
}

/** Shows in every formula of ours what it must, as a spreadsheet program does; in one that nobody filled nothing. */
export function computed(sheet: SheetSnapshot): SheetSnapshot {
  const tab = readTab(sheet);
  if (tab === null) return sheet;
  const cells = twinCells(sheet, tab).flatMap(({ row, column, value }): Written[] => {
    const formula = sheet.formulas[row]?.[column] ?? null;
    return formula === null ? [] : [[row, column, value, formula]];
  });
  return withCells(sheet, ...cells);
}

/** Numbers the columns of a tab by their keys. */
export function columnsOf({ places: { columns } }: TabReading): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(columns));
}
