import { showCell, type CellValue, type SheetPlan, type WorkbookSnapshot } from "../../src/sheet";

/** Lists everything that stands in a planned workbook by sheet, cell by cell; formulas stand for their results. */
export function plannedCells(plans: readonly SheetPlan[]): Record<string, string[]> {
  return Object.fromEntries(plans.map(({ name, rows }) => [name, written(rows)]));
}

/** Lists the same of a workbook that was read from a file. */
export function cellsInFile(workbook: WorkbookSnapshot): Record<string, string[]> {
  return Object.fromEntries(
    workbook.sheets.map(({ name, values, formulas }) => [name, written(values.map((line, row) => line.map((value, column) => ({ value, formula: formulas[row]?.[column] ?? null }))))]),
  );
}

function written(rows: readonly (readonly { readonly value?: CellValue; readonly formula?: string | null }[])[]): string[] {
  return rows.flatMap((line, row) =>
    line.flatMap(({ value, formula }, column) => {
      const shown = formula ?? showCell(value);
      return shown === "" ? [] : [`${row},${column}: ${shown}`];
    }),
  );
}
