import type { ICellData, IWorksheetData } from "@univerjs/core";
import { bootEngine } from "../../../src/headless/open-headless";
import { cellKind } from "../../../src/workbook/engine/engine-values";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { cellValue } from "../../../src/workbook/engine/sheet-snapshot";
import { eachCell } from "../../../src/workbook/engine/stored-sheet";
import { placeOf, type HostSheet, type Result } from "./host-sheet";

/** Results of a sheet's formulas by their place. */
export type Results = ReadonlyMap<number, Result>;

/** A sheet as it is when the computing begins. */
export interface HeldSheet {
  readonly id: string;
  readonly name: string;
  readonly cells: ReturnType<HostSheet["entered"]>;
}

/** Computes what the formulas of a workbook come to, sheet by sheet, in an engine of their own. */
export async function computeSheets(sheets: readonly HeldSheet[]): Promise<ReadonlyMap<string, Results>> {
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
function stored({ id, name, cells: entered }: HeldSheet): Partial<IWorksheetData> {
  const cells: Record<number, Record<number, ICellData>> = {};
  for (const { row, column, value, formula } of entered) (cells[row] ??= {})[column] = formula === undefined ? storedValue(value) : { f: formula };
  return {
    id,
    name,
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
