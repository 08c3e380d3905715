import type { CellBlock, SheetSnapshot } from "../../../sheet";
import { canonicalText, invalid, quote } from "../../text";
import { stepFields, snagFields, type Entries, type SnagField, type StepField, type StepRecord } from "../record";
import { columnOf } from "./sheet-columns";
import { snagColumnsOf } from "./snag-columns";
import { slotColumns, stepColumns, tags, type TabColumn } from "./tab-columns";
import type { TabReading } from "./tab-reading";

/**
 * Plans the cells into which somebody types about a step, each by itself; null empties one.
 *
 * A step in the row of a grid has cells of its own for what was found and for the note alone: its names stand in the row that signs for the grid,
 * and the rest in a row that it gets once it wants one.
 */
export function stepBlocks(tab: TabReading, { row, slot }: Pick<StepRecord, "row" | "slot">, entries: Partial<Entries<StepField>>): CellBlock[] {
  const columns = slot === null ? stepColumns : { found: slotColumns[slot.place]!.found, note: stepColumns.note };
  return blocksOf(tab, row, stepFields, columns, entries);
}

/** Plans the cells into which somebody types about a snag, in its row or, where that is null, in the first one for snags that is blank. */
export function snagBlocks(sheet: SheetSnapshot, tab: TabReading, row: number | null, entries: Partial<Entries<SnagField>>): CellBlock[] {
  return blocksOf(tab, row ?? blankSnagRow(sheet, tab), snagFields, snagColumnsOf(tab.places.layout), entries);
}

/** Finds the first row for snags in which nobody has typed; refuses a tab without one. */
function blankSnagRow(sheet: SheetSnapshot, tab: TabReading): number {
  const { key } = tab.places.columns;
  const isTaken = new Set([...tab.snags, ...tab.elsewhere].map(({ row }) => row));
  const row = sheet.values.findIndex((line, index) => key !== undefined && canonicalText(line[key]) === tags.snag && !isTaken.has(index));
  if (row < 0) throw invalid("tab", tab.sheet, `Tab ${quote(tab.sheet)} has no blank row for snags left. Build it again, which adds some.`);
  return row;
}

function blocksOf<Field extends string>(
  tab: TabReading, row: number, fields: readonly Field[], columns: Readonly<Partial<Record<Field, TabColumn>>>, entries: Partial<Entries<Field>>,
): CellBlock[] {
  return fields.flatMap((field): CellBlock[] => {
    const value = entries[field];
    const column = columns[field];
    if (value === undefined) return [];
    if (column === undefined) throw new Error(`Nothing is typed under ${field} in row ${row + 1}.`);
    return [{ row, column: columnOf(tab, column), cells: [[{ value }]] }];
  });
}
