import { foldName } from "../../text";
import type { CellValue, SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { columnsOf, tables, type TableKey } from "../schema";

/** Where a planning table stands; rows and columns of the sheet, counted from 0, both ends included. */
export interface TableLocation {
  readonly sheet: SheetSnapshot;
  readonly headerRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
  readonly lastRow: number;
}

/** Makes the name under which the host knows a planning table, such as `BayArrays`. */
export function hostTableName(key: TableKey): string {
  return `Bay${tables[key].name.replace(/\s+/g, "")}`;
}

/** Makes the text of the cell above a planning table by which it is found where there are no named tables. */
export function markerText(key: TableKey): string {
  return `Table: ${tables[key].name}`;
}

/**
 * Finds a planning table: by its table name, else by the header row below its marker cell.
 *
 * Below a marker the header is the first row that holds at least two of the table's headers (one, for a table of one column). It
 * begins at the first of them and reaches to the last cell in an unbroken run; its rows reach to the end of the sheet.
 */
export function locateTable(workbook: WorkbookSnapshot, key: TableKey): TableLocation | null {
  const wanted = foldName(hostTableName(key));
  for (const sheet of workbook.sheets) {
    const named = sheet.tables.find(({ name }) => foldName(name) === wanted);
    if (named === undefined) continue;
    const { row, column, rows, columns } = named.area;
    return { sheet, headerRow: row, firstColumn: column, lastColumn: column + columns - 1, lastRow: row + rows - 1 };
  }
  for (const sheet of workbook.sheets) {
    const below = markerRow(sheet, foldName(markerText(key)));
    const found = below === null ? null : headerBelow(sheet, key, below);
    if (found !== null) return found;
  }
  return null;
}

/** Markers of a sheet by their folded texts: read once, however many tables are looked for. */
const markersOfSheets = new WeakMap<SheetSnapshot, ReadonlyMap<string, number>>();

function markerRow(sheet: SheetSnapshot, marker: string): number | null {
  let markers = markersOfSheets.get(sheet);
  if (markers === undefined) markersOfSheets.set(sheet, (markers = markersOf(sheet)));
  return markers.get(marker) ?? null;
}

function markersOf({ values }: SheetSnapshot): Map<string, number> {
  const markers = new Map<string, number>();
  values.forEach((line, row) => {
    for (const cell of line) {
      if (typeof cell !== "string" || !/^\s*table\b/i.test(cell)) continue;
      const marker = foldName(cell);
      if (!markers.has(marker)) markers.set(marker, row);
    }
  });
  return markers;
}

function headerBelow(sheet: SheetSnapshot, key: TableKey, marker: number): TableLocation | null {
  const headers = new Set(columnsOf(key).map(([, { header }]) => foldName(header)));
  const enough = Math.min(2, headers.size);
  for (let row = marker + 1; row < sheet.values.length; row += 1) {
    const line = sheet.values[row]!;
    const known = line.flatMap((cell, column) => (headers.has(textOf(cell)) ? [column] : []));
    if (known.length < enough) continue;
    let firstColumn = known[0]!;
    while (textOf(line[firstColumn - 1]) !== "") firstColumn -= 1;
    let lastColumn = known.at(-1)!;
    while (textOf(line[lastColumn + 1]) !== "") lastColumn += 1;
    return { sheet, headerRow: row, firstColumn, lastColumn, lastRow: sheet.values.length - 1 };
  }
  return null;
}

function textOf(cell: CellValue | undefined): string {
  return typeof cell === "string" ? foldName(cell) : "";
}
