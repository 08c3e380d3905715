import { rowsOfSteps } from "../record";
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
