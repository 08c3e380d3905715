import { rowsOfSteps } from "../record";
import { slotColumns, type TabColumn } from "./tab-columns";
import type { TabReading } from "./tab-reading";

/** Names the rows of a tab in sentences: a step by its number, id and subject, another one by where it stands. */
export function rowLabels({ steps, snags, orphans, seals }: Pick<TabReading, "steps" | "snags" | "orphans" | "seals">): (row: number) => string {
  const labels = new Map<number, string>();
  for (const { row, no, stepId, records } of rowsOfSteps(steps)) labels.set(row, `No. ${no} ${stepId} ${records[0]!.subject}`.trim());
  for (const { row } of snags) labels.set(row, `the snag in row ${row + 1}`);
  for (const { row } of orphans) labels.set(row, `the kept record in row ${row + 1}`);
  for (const { row } of seals) labels.set(row, `the seal in row ${row + 1}`);
  return (row) => labels.get(row) ?? `row ${row + 1}`;
}

/** Names the columns of each row of a grid whose headers say something else: those of its slots, by step id, or by whose they are. */
export function slotHeaders({ steps }: Pick<TabReading, "steps">): ReadonlyMap<number, ReadonlyMap<string, string>> {
  const headers = new Map<number, Map<TabColumn, string>>();
  for (const { row, slot, stepId } of steps) {
    if (slot === null) continue;
    const ofRow = headers.get(row) ?? new Map<TabColumn, string>();
    const { expected, found } = slotColumns[slot.place]!;
    headers.set(row, ofRow.set(expected, `Expected ${slot.head || stepId}`).set(found, `Found ${slot.head || stepId}`));
  }
  return headers;
}
