import type { Cell, SheetPlan } from "./sheet-plan";

/** Cells to be written over a part of a sheet, from its first row and column on; a null leaves what stands there. */
export interface CellBlock {
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly (Cell | null)[])[];
}

/** Lists the rows in which a later plan of a sheet differs from an earlier one, as blocks that turn the earlier into the later. */
export function changedRows(earlier: SheetPlan, later: SheetPlan): CellBlock[] {
  const blocks: CellBlock[] = [];
  const rows = Math.max(earlier.rows.length, later.rows.length);
  for (let row = 0; row < rows; row += 1) {
    const [before = [], after = []] = [earlier.rows[row], later.rows[row]];
    const columns = Math.max(before.length, after.length);
    const cells = Array.from({ length: columns }, (_, column): Cell | null => {
      const made = after[column] ?? {};
      return isAlike(before[column] ?? {}, made) ? null : made;
    });
    if (cells.some((cell) => cell !== null)) blocks.push({ row, column: 0, cells: [cells] });
  }
  return blocks;
}

/** Tells whether two cells say the same: a formula decides alone, as the value beside it is only what it is known to answer. */
function isAlike(one: Cell, other: Cell): boolean {
  return one.formula === other.formula && (one.formula !== undefined || (one.value ?? null) === (other.value ?? null));
}
