import type { Cell, CellBlock, Scalar } from "../../../sheet";
import { invalid, quote } from "../../text";
import { sealOf } from "../seal";
import { sealColumns, tabColumns, tags, type TabColumn } from "./tab-columns";
import type { TabReading } from "./tab-reading";

/** Who seals or reopens a tab, and when. */
export interface SealAct {
  readonly by: string;
  /** ISO date. */
  readonly date: string;
}

/**
 * Plans the cells that seal a tab: first the digests of its rows, then the line with the code.
 *
 * A beginning of them without the line leaves the tab unsealed. The line remembers how many steps there were.
 */
export function sealBlocks(tab: TabReading, { by, date }: SealAct): CellBlock[] {
  const { rows, code } = sealOf(tab);
  const first = Math.min(...rows.map(({ row }) => row));
  const last = Math.max(...rows.map(({ row }) => row));
  const digests: (readonly (Cell | null)[])[] = Array.from({ length: last - first + 1 }, () => [null]);
  for (const { row, digest } of rows) digests[row - first] = [{ value: digest }];
  const line = (tab.seals.at(-1)?.row ?? tab.places.sealsRow + 1) + 1;
  return [
    { row: first, column: columnOf(tab, "digest"), cells: digests },
    lineBlock(tab, line, {
      [sealColumns.sealed]: date,
      [sealColumns.code]: code,
      [sealColumns.by]: by,
      key: tags.seal,
      digest: String(tab.steps.length),
    }),
  ];
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

function columnOf(tab: TabReading, column: TabColumn): number {
  const found = tab.places.columns[column];
  if (found !== undefined) return found;
  const { header } = tabColumns[column];
  throw invalid("tab", header, `The header ${quote(header)} of ${quote(tab.sheet)} is gone. Undo that, or write it back over its column.`);
}
