import { formulaReferences, type Area } from "../../sheet";

/** A cell on a sheet, by the name of the sheet. */
export interface CellOnSheet {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Most cells that are looked at: whoever selects a cell waits for it. */
const mostCells = 500;

/**
 * Tells whether a formula needs its own answer, directly or by way of other cells; false too where that is more than 500 cells away.
 *
 * The engine shows the figure of one round through the circle, which is nobody's answer, and no error.
 */
export function isInCircle(start: CellOnSheet, formulaOf: (cell: CellOnSheet) => string | null): boolean {
  const seen = new Set<string>();
  const open: CellOnSheet[] = [start];
  for (let cell = open.pop(), looked = 0; cell !== undefined && looked < mostCells; cell = open.pop()) {
    const formula = formulaOf(cell);
    if (formula === null) continue;
    for (const { sheet = cell.sheet, area } of formulaReferences(formula)) {
      if (sheet === start.sheet && isWithin(start, area)) return true;
      for (let at = 0; at < Math.min(area.rows * area.columns, mostCells) && looked < mostCells; at += 1, looked += 1) {
        const next = { sheet, row: area.row + Math.floor(at / area.columns), column: area.column + (at % area.columns) };
        const key = `${next.sheet}!${next.row},${next.column}`;
        if (!seen.has(key)) open.push(next);
        seen.add(key);
      }
    }
  }
  return false;
}

function isWithin({ row, column }: CellOnSheet, area: Area): boolean {
  return row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
}
