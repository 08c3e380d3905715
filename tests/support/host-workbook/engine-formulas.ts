import type { ICellData, IWorksheetData } from "@univerjs/core";
import { bootEngine } from "../../../src/headless/open-headless";
import { cellKind } from "../../../src/workbook/engine/engine-values";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { cellValue } from "../../../src/workbook/engine/sheet-snapshot";
import { eachCell } from "../../../src/workbook/engine/stored-sheet";
import { Computing, placeOf, type Formulas, type HostSheet, type Result } from "./host-sheet";

/** Results of a sheet's formulas by their place. */
type Results = ReadonlyMap<number, Result>;

/** What workbooks came to, by what they hold: a test that tries the same one a hundred times has it computed once. */
const computed = new Map<string, ReadonlyMap<string, Results> | Promise<void>>();
const mostKept = 300;

/** Computes the formulas of a workbook in the engine of the browser workbook, once somebody asks for what they come to. */
export function engineFormulas(sheets: () => readonly HostSheet[]): Formulas {
  return (sheet) => {
    // Names too: formulas speak of other sheets by them.
    const key = sheets().map((one) => `${one.contents()} ${one.name}`).join("\n");
    const known = computed.get(key);
    if (known instanceof Promise) throw new Computing(known);
    if (known === undefined) {
      const done = computeSheets(sheets()).then((results) => void computed.set(key, results));
      if (computed.size >= mostKept) computed.clear();
      computed.set(key, done);
      throw new Computing(done);
    }
    const own = known.get(sheet.name);
    return (_formula, place) => own?.get(place) ?? null;
  };
}

async function computeSheets(sheets: readonly HostSheet[]): Promise<ReadonlyMap<string, Results>> {
  const univer = bootEngine({ name: "", sheetOrder: sheets.map(({ id }) => id), sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, stored(sheet)])) });
  const live = new LiveWorkbook(univer);
  try {
    await live.settle();
    return new Map(
      live.workbook.getSheets().map((sheet) => {
        const results = new Map<number, Result>();
        eachCell(sheet.getConfig(), (cell, row, column) => results.set(placeOf(row, column), cellValue(cell, true)));
        for (const { area, values } of live.spills(sheet)) results.set(placeOf(area.row, area.column), values);
        return [sheet.getName(), results];
      }),
    );
  } finally {
    live.dispose();
  }
}

/** A sheet as the engine stores one, with room for what formulas spill. */
function stored(sheet: HostSheet): Partial<IWorksheetData> {
  const cells: Record<number, Record<number, ICellData>> = {};
  const entered = sheet.entered();
  for (const { row, column, value, formula } of entered) (cells[row] ??= {})[column] = formula === undefined ? storedValue(value) : { f: formula };
  return {
    id: sheet.id,
    name: sheet.name,
    cellData: cells,
    rowCount: Math.max(0, ...entered.map(({ row }) => row)) + 1_000,
    columnCount: Math.max(0, ...entered.map(({ column }) => column)) + 100,
  };
}

function storedValue(value: unknown): ICellData {
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: cellKind.boolean };
  if (typeof value === "number") return { v: value, t: cellKind.number };
  return { v: String(value), t: cellKind.text };
}
