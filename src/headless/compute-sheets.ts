import type { CellPlace } from "../sheet";
import { cellAt, type CellGrid, type WorkbookDocument } from "../workbook/document/workbook-document";

/**
 * Computes single cells of sheets, each sheet by itself with everything else on it as it stands; answers the document with their results.
 *
 * Null where one of them looks at another sheet: then the whole workbook has to be computed. The engine starts only if there is a cell.
 */
export async function computeSheets(document: WorkbookDocument, open: ReadonlyMap<string, readonly CellPlace[]>): Promise<WorkbookDocument | null> {
  const wanted = document.sheets.filter(({ id }) => open.has(id));
  if (wanted.length === 0) return document;
  for (const { id, cells } of wanted) {
    if (open.get(id)!.some(({ row, column }) => looksBeyond(cellAt(cells, row, column)?.formula))) return null;
  }
  const { openEngine } = await import("./open-engine");
  const results = new Map<string, CellGrid>();
  const engine = openEngine();
  try {
    for (const sheet of wanted) {
      const live = new Set(open.get(sheet.id)!.map(({ row, column }) => `${row} ${column}`));
      const cells: CellGrid = new Map([...sheet.cells].map(([row, line]) => [row, new Map([...line].map(([column, { value, formula }]) => {
        return [column, formula !== undefined && live.has(`${row} ${column}`) ? { value: null, formula, hasResult: false, look: 0 } : { value, look: 0 }];
      }))]));
      results.set(sheet.id, await engine.compute({ sheets: [{ ...sheet, cells, typingRules: [], formats: [] }], looks: [{}], names: [] }));
    }
  } finally {
    engine.dispose();
  }
  return {
    ...document,
    sheets: document.sheets.map((sheet) => {
      const found = results.get(sheet.id);
      if (found === undefined) return sheet;
      const cells: CellGrid = new Map(sheet.cells);
      for (const { row, column } of open.get(sheet.id)!) {
        cells.set(row, new Map(cells.get(row)).set(column, { ...cellAt(sheet.cells, row, column)!, value: cellAt(found, row, column)?.value ?? null, hasResult: true }));
      }
      return { ...sheet, cells };
    }),
  };
}

/** Names of tables and cells may stand for other sheets too; formulas of tabs have none. */
function looksBeyond(formula = ""): boolean {
  return formula.includes("!") || formula.includes("[");
}
