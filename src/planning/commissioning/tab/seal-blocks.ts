import type { Cell, CellBlock, Scalar, SheetSnapshot } from "../../../sheet";
import { sealOf } from "../seal";
import { rowCodes } from "./coded-columns";
import { scopeText, sealedRows } from "./sealed-tab";
import { columnOf } from "./sheet-columns";
import { sealColumns, tags, type TabColumn } from "./tab-columns";
import { sealCountColumn } from "./tab-mark";
import type { TabReading } from "./tab-reading";

/** Who seals or reopens a tab, and when. */
export interface SealAct {
  readonly by: string;
  /** Day in ISO form, with the time behind it. */
  readonly date: string;
}

/**
 * Plans the cells that seal a tab: first the digests of its rows, then the line with the code, then how many lines there are.
 *
 * A beginning of them without the line leaves the tab unsealed. The line remembers the version of the seal and the rows that it covers.
 */
export function sealBlocks(sheet: SheetSnapshot, tab: TabReading, { by, date }: SealAct): CellBlock[] {
  const rows = sealedRows(sheet, tab);
  const filled = rows.filter(({ cells }) => cells.size > 0);
  const digests = rows.filter(({ row }) => row !== tab.headerRow).map(({ row, cells }): [number, Cell] => [row, cells.size === 0 ? {} : { value: `${row + 1}:${rowCodes.write(cells)}` }]);
  return [
    ...columnBlocks(columnOf(tab, "digest"), digests),
    lineBlock(tab, sealRowOf(tab), {
      [sealColumns.sealed]: date,
      [sealColumns.code]: sealOf(filled, { sealed: date, by }),
      [sealColumns.by]: by,
      key: tags.seal,
      digest: scopeText(filled, tab.headerRow),
    }),
    ...countBlocks(sheet, tab),
  ];
}

/** Plans the cell that counts the seals; a tab that was built without it stays without. */
function countBlocks(sheet: SheetSnapshot, tab: TabReading): CellBlock[] {
  const column = columnOf(tab, sealCountColumn);
  return typeof sheet.values[tab.markRow]?.[column] === "number" ? [{ row: tab.markRow, column, cells: [[{ value: tab.seals.length + 1 }]] }] : [];
}

/** Finds the row, from 0, into which the next seal of a tab is written: below the last one, else below the labels. */
export function sealRowOf(tab: TabReading): number {
  return (tab.seals.at(-1)?.row ?? tab.places.sealsRow + 1) + 1;
}

/** Gathers cells of one column, from top to bottom, into blocks of rows that follow each other. */
function columnBlocks(column: number, cells: readonly (readonly [row: number, cell: Cell])[]): CellBlock[] {
  const blocks: { row: number; column: number; cells: Cell[][] }[] = [];
  for (const [row, cell] of cells) {
    const last = blocks.at(-1);
    if (last !== undefined && last.row + last.cells.length === row) last.cells.push([cell]);
    else blocks.push({ row, column, cells: [[cell]] });
  }
  return blocks;
}

/** Plans the cells that reopen a sealed tab: a dated line with name and reason behind its seal, which stays. */
export function reopenBlocks(tab: TabReading, { by, date, reason }: SealAct & { readonly reason: string }): CellBlock[] {
  const last = tab.seals.at(-1);
  if (last === undefined) return [];
  return [lineBlock(tab, last.row, { [sealColumns.reopened]: date, [sealColumns.reopenedBy]: by, [sealColumns.reason]: reason })];
}

function lineBlock(tab: TabReading, row: number, texts: Partial<Record<TabColumn, Scalar>>): CellBlock {
  const columns = (Object.keys(texts) as TabColumn[]).map((key) => [columnOf(tab, key), texts[key]!] as const);
  const cells = new Array<Cell | null>(Math.max(...columns.map(([column]) => column)) + 1).fill(null);
  for (const [column, value] of columns) cells[column] = { value };
  return { row, column: 0, cells: [cells] };
}
