/** A cell by its place on a sheet, counted from 0. */
export interface CellPlace {
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells, counted from 0. */
export interface Area extends CellPlace {
  readonly rows: number;
  readonly columns: number;
}

/** Rows and columns of every sheet of the spreadsheet host, as its published limits give them: XFD1048576 is the last cell. */
export const sheetSize = { rows: 1_048_576, columns: 16_384 } as const;

/** Makes the area of one cell. */
export function cellArea({ row, column }: CellPlace): Area {
  return { row, column, rows: 1, columns: 1 };
}

/** Tells whether a cell lies in an area. */
export function isInArea({ row, column }: CellPlace, area: Area): boolean {
  return row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
}

/** Tells whether two areas have a cell in common. */
export function areasMeet(one: Area, other: Area): boolean {
  return (
    one.row < other.row + other.rows && other.row < one.row + one.rows && one.column < other.column + other.columns && other.column < one.column + one.columns
  );
}
