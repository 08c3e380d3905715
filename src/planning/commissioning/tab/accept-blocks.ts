import { longestText, type CellBlock, type SheetSnapshot } from "../../../sheet";
import { invalid, quote } from "../../text";
import { factLine, snagEnds } from "../record";
import { snagBlocks } from "./entry-blocks";
import type { TabReading } from "./tab-reading";

/**
 * Plans the snag that accepts some facts by name and reason, in the first row for snags that is blank: a line each, to be read by everybody,
 * carried and sealed as every snag is. Refuses a tab without such a row, and more than a cell takes.
 */
export function acceptBlocks(sheet: SheetSnapshot, tab: TabReading, facts: readonly string[], { by, reason }: { readonly by: string; readonly reason: string }): CellBlock[] {
  const foundWrong = facts.map(factLine).join("\n");
  if (foundWrong.length > longestText) throw invalid("tab", tab.sheet, `${facts.length} things are too many to accept at once. Build ${quote(tab.sheet)} again first.`);
  return snagBlocks(sheet, tab, null, { foundWrong, closed: snagEnds.accepted, by, note: reason });
}
