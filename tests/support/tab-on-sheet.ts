import { readTabs, type TabReading } from "../../src/planning/commissioning/tab";
import { snagColumns, type SnagColumn } from "../../src/planning/commissioning/tab/snag-columns";
import type { Scalar } from "../../src/sheet";
import type { WorkbookPort } from "../../src/workbook/port";

/** Reads the tabs of a workbook that are in sight. */
export async function tabsInSight(port: WorkbookPort): Promise<TabReading[]> {
  return readTabs(await port.read()).filter(({ visible }) => visible);
}

/** Reads the one tab in sight. */
export async function tabInSight(port: WorkbookPort): Promise<TabReading> {
  const tabs = await tabsInSight(port);
  if (tabs.length !== 1) throw new Error(`${tabs.length} tabs are in sight: ${tabs.map(({ sheet }) => sheet).join(", ")}`);
  return tabs[0]!;
}

/** Tells where the record of a step is typed, by the end of its key: `T-10/A0001`. */
export function cellOf(tab: TabReading, key: string, column = "found"): { readonly sheet: string; readonly row: number; readonly column: number } {
  const found = tab.steps.find((step) => step.key.endsWith(`/${key}`));
  if (found === undefined) throw new Error(`The tab has no step ${key}: ${tab.steps.map((step) => step.key).join(", ")}`);
  return { sheet: tab.sheet, row: found.row, column: columnOf(tab, column) };
}

/** Finds a column of a tab by its key, as it stands on the sheet. */
export function columnOf(tab: TabReading, column: string): number {
  const found = Object.entries(tab.places.columns).find(([key]) => key === column);
  if (found === undefined) throw new Error(`The tab has no column ${column}: ${Object.keys(tab.places.columns).join(", ")}`);
  return found[1];
}

/** Finds a column of the block of snags by what it holds, as it stands on the sheet. */
export function snagColumnOf(tab: TabReading, column: SnagColumn): number {
  return columnOf(tab, snagColumns[column]);
}

/** Types into the rows of steps as a person does: `{"T-10/A0001": {found: "N-0001"}}`. */
export async function typeInto(port: WorkbookPort, tab: TabReading, records: Readonly<Record<string, Readonly<Record<string, Scalar>>>>): Promise<void> {
  await port.apply(
    Object.entries(records).flatMap(([key, cells]) => Object.entries(cells).map(([column, value]) => ({ kind: "write" as const, ...cellOf(tab, key, column), cells: [[{ value }]] }))),
  );
}
