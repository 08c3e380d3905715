import type { Cell, CellPlace } from "../sheet";
import type { Edit } from "../workbook/port";

/** A cell to write and where. */
export interface PlacedCell extends CellPlace {
  readonly cell: Cell;
}

/** Writes scattered cells of one sheet as one block that leaves every other cell alone. */
export function cellsEdit(sheet: string, placed: readonly PlacedCell[]): Edit {
  const row = placed.reduce((least, one) => Math.min(least, one.row), Infinity);
  const column = placed.reduce((least, one) => Math.min(least, one.column), Infinity);
  const rows = placed.reduce((most, one) => Math.max(most, one.row + 1), 0) - row;
  const columns = placed.reduce((most, one) => Math.max(most, one.column + 1), 0) - column;
  const cells = Array.from({ length: rows }, () => new Array<Cell | null>(columns).fill(null));
  for (const one of placed) cells[one.row - row]![one.column - column] = one.cell;
  return { kind: "write", sheet, row, column, cells };
}
