import type { Cell, SheetPlan } from "../../../sheet";

/** A block of cells that differ between two plans of one sheet; null cells are alike. */
export interface CellBlock {
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly (Cell | null)[])[];
}

/** Lists the rows in which a later plan of a tab differs from an earlier one, as blocks to be written over it. */
export function changedRows(earlier: SheetPlan, later: SheetPlan): CellBlock[] {
  const blocks: CellBlock[] = [];
  const rows = Math.max(earlier.rows.length, later.rows.length);
  for (let row = 0; row < rows; row += 1) {
    const [before = [], after = []] = [earlier.rows[row], later.rows[row]];
    const cells: (Cell | null)[] = [];
    for (let column = 0; column < Math.max(before.length, after.length); column += 1) {
      const [old, made] = [before[column] ?? {}, after[column] ?? {}];
      const isAlike = old.formula === made.formula && (made.formula !== undefined || (old.value ?? null) === (made.value ?? null));
      cells.push(isAlike ? null : made);
    }
    if (cells.some((cell) => cell !== null)) blocks.push({ row, column: 0, cells: [cells] });
  }
  return blocks;
}
