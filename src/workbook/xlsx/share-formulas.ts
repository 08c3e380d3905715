import { formulaShifter, sheetSize, type Area, type CellPlace } from "../../sheet";
import { isOurs } from "../document/formula-kind";
import type { CellGrid } from "../document/workbook-document";

/** Cells below each other whose formulas say the same of the cells around them. */
export interface FormulaGroup {
  /** Its number on the sheet. */
  readonly number: number;
  readonly area: Area;
}

interface Growing extends CellPlace {
  readonly shifted: (rows: number, columns: number) => string;
  readonly rows: number[];
}

/** Kinds of formulas that are told apart in a column; a column of many kinds is written out. */
const mostKinds = 8;

/**
 * Finds cells of a column that can share one formula, as the first of them has it: a sheet of a thousand steps has thirty kinds.
 *
 * Asked for a cell, the answer names its group; nothing for a cell that is alone. ECMA-376 part 1, section 18.3.1.40.
 */
export function shareFormulas(cells: CellGrid): (row: number, column: number) => FormulaGroup | undefined {
  const columns = new Map<number, Growing[]>();
  for (const row of [...cells.keys()].sort((a, b) => a - b)) {
    for (const [column, { formula, array }] of cells.get(row)!) {
      if (formula === undefined || array !== undefined || isOurs(formula)) continue;
      const kinds = columns.get(column) ?? [];
      columns.set(column, kinds);
      const found = kinds.find((kind) => kind.shifted(row - kind.row, 0) === formula);
      if (found !== undefined) found.rows.push(row);
      else if (kinds.length < mostKinds) kinds.push({ row, column, shifted: formulaShifter(formula), rows: [row] });
    }
  }
  const groups = new Map<number, FormulaGroup>();
  let number = 0;
  for (const { row, column, rows } of [...columns.values()].flat()) {
    if (rows.length < 2) continue;
    const group = { number, area: { row, column, rows: rows.at(-1)! - row + 1, columns: 1 } };
    number += 1;
    for (const one of rows) groups.set(one * sheetSize.columns + column, group);
  }
  return (row, column) => groups.get(row * sheetSize.columns + column);
}
