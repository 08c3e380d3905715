import type { Cell, Scalar } from "../../../sheet";
import type { CellBlock } from "./cell-blocks";
import { sealOf } from "../seal";
import { sealColumnKeys, tags, type SealColumn, type TabColumn } from "./tab-columns";
import type { TabReading } from "../record";

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
  const column = tab.places.columns.digest ?? 0;
  const first = Math.min(...rows.map(({ row }) => row));
  const digests: (readonly (Cell | null)[])[] = Array.from({ length: Math.max(...rows.map(({ row }) => row)) - first + 1 }, () => [null]);
  for (const { row, digest } of rows) digests[row - first] = [{ value: digest }];
  const line = (tab.seals.at(-1)?.row ?? tab.places.sealsRow + 1) + 1;
  return [
    { row: first, column, cells: digests },
    blockIn(tab, line, { stepId: date, step: code, subject: by, key: tags.seal, digest: String(tab.steps.length) }),
  ];
}

/** Plans the cells that reopen a sealed tab: a dated line with name and reason behind its seal, which stays. */
export function reopenBlocks(tab: TabReading, { by, date, reason }: SealAct & { readonly reason: string }): CellBlock[] {
  const last = tab.seals.at(-1);
  return last === undefined ? [] : [blockIn(tab, last.row, { expected: date, found: by, note: reason })];
}

function blockIn(tab: TabReading, row: number, texts: Partial<Record<SealColumn | "key" | "digest", Scalar>>): CellBlock {
  const columns = Object.keys(texts).map((key) => tab.places.columns[key] ?? 0);
  const cells = new Array<Cell | null>(Math.max(...columns) + 1).fill(null);
  for (const key of [...sealColumnKeys, "key", "digest"] as const satisfies readonly TabColumn[]) {
    const value = texts[key];
    if (value !== undefined) cells[tab.places.columns[key] ?? 0] = { value };
  }
  return { row, column: 0, cells: [cells] };
}
