import type { Changes } from "../../src/planning/plan/changes";
import type { WorkbookSnapshot } from "../../src/sheet";
import { withCell } from "./plain-workbook";

/** Carries changes out as the host does: tables grow, cells are written. */
export function carryOut(workbook: WorkbookSnapshot, { writes, growths }: Changes): WorkbookSnapshot {
  const written = writes.reduce((book, { sheet, row, column, value }) => withCell(book, sheet, row, column, value), workbook);
  const areas = new Map(growths.map(({ table, area }) => [table, area]));
  return { sheets: written.sheets.map((one) => ({ ...one, tables: one.tables.map((table) => ({ ...table, area: areas.get(table.name) ?? table.area })) })) };
}
