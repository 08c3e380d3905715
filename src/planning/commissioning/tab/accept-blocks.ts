import { longestText, type CellBlock, type SheetSnapshot } from "../../../sheet";
import { canonicalText, invalid, quote } from "../../text";
import { factLine, snagEnds, type SnagField } from "../record";
import { snagColumns } from "./snag-columns";
import { tags } from "./tab-columns";
import type { TabReading } from "./tab-reading";

/**
 * Plans the snag that accepts some facts by name and reason, in the first row for snags that is blank: a line each, to be read by everybody,
 * carried and sealed as every snag is. Refuses a tab without such a row, and more than a cell takes.
 */
export function acceptBlocks(sheet: SheetSnapshot, tab: TabReading, facts: readonly string[], { by, reason }: { readonly by: string; readonly reason: string }): CellBlock[] {
  const { columns } = tab.places;
  const isTaken = new Set([...tab.snags, ...tab.elsewhere].map(({ row }) => row));
  const row = sheet.values.findIndex((line, index) => columns.key !== undefined && canonicalText(line[columns.key]) === tags.snag && !isTaken.has(index));
  if (row < 0) throw invalid("tab", tab.sheet, `Tab ${quote(tab.sheet)} has no blank row for snags left. Build it again, which adds some.`);
  const foundWrong = facts.map(factLine).join("\n");
  if (foundWrong.length > longestText) throw invalid("tab", tab.sheet, `${facts.length} things are too many to accept at once. Build ${quote(tab.sheet)} again first.`);
  const texts: Partial<Record<SnagField, string>> = { foundWrong, closed: snagEnds.accepted, by, note: reason };
  return (Object.keys(texts) as SnagField[]).flatMap((field) => {
    const column = columns[snagColumns[field]];
    return column === undefined ? [] : [{ row, column, cells: [[{ value: texts[field]! }]] }];
  });
}
