import { at, tabColumnKeys, tabColumns, type TabColumn } from "./tab-columns";

/** Which headers a tab has, in which order: today's, those before a header was shortened, those of a release without grids, or of one before that. */
export type TabLayout = "today" | "grids" | "lists" | "earlier";

/** Every layout; of those that match a row of headers alike the first is taken. */
export const tabLayouts = ["lists", "today", "grids", "earlier"] as const satisfies readonly TabLayout[];

/** Columns of a release without grids: today's but for those behind them. */
const listColumns = tabColumnKeys.slice(0, at.digest + 1);

/**
 * Headers that were called otherwise, and the order in which the columns stood, in tabs of an earlier release.
 *
 * Such a tab is read like any other, so that nothing typed into it is lost when it is built again; then it has the columns of today.
 */
const longHeaders: Partial<Record<TabColumn, string>> = { expectedBefore: "Expected before" };
const earlierHeaders: Partial<Record<TabColumn, string>> = { expectedBefore: "Was", recheckedBy: "Seen again", witness: "Second" };
const earlierOrder: readonly TabColumn[] = listColumns.flatMap((key) => (key === "result" || key === "built" ? [] : key === "unit" ? [key, "result"] : [key]));

const todaysHeaders = Object.fromEntries(tabColumnKeys.map((key) => [key, tabColumns[key].header])) as Record<TabColumn, string>;
const headers: Readonly<Record<TabLayout, Readonly<Record<TabColumn, string>>>> = {
  today: todaysHeaders,
  grids: { ...todaysHeaders, ...longHeaders },
  lists: { ...todaysHeaders, ...longHeaders },
  earlier: { ...todaysHeaders, ...earlierHeaders },
};

/** Lists the header of each column in a layout. */
export function headersOf(layout: TabLayout): Readonly<Record<TabColumn, string>> {
  return headers[layout];
}

/** Lists the columns of a layout from left to right. */
export function columnsInOrder(layout: TabLayout): readonly TabColumn[] {
  return { today: tabColumnKeys, grids: tabColumnKeys, lists: listColumns, earlier: earlierOrder }[layout];
}
