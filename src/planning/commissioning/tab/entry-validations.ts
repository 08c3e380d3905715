import type { Area, Validation } from "../../../sheet";
import type { JobStep } from "../job";
import { seenUnits } from "../procedure";
import { snagEnds } from "../record";
import { kindsOnTab, type EntryRule } from "./kind-on-tab";
import { snagColumns } from "./snag-columns";
import { at, slotColumns, type SlotColumns, type TabColumn } from "./tab-columns";
import type { RowSpan } from "./tab-formulas";

const day: EntryRule = { rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false };
const unit: EntryRule = { rule: { kind: "list", items: Object.keys(seenUnits) }, message: "Choose the unit that was seen: TB, TiB or bytes.", strict: true };
const snagEnd: EntryRule = {
  rule: { kind: "list", items: Object.values(snagEnds) },
  message: `Choose ${snagEnds.closed} once it is mended, or ${snagEnds.accepted} with a name.`,
  strict: true,
};

/** A step with its row on the sheet, and its columns where it stands in a grid. */
export interface PlacedStep {
  readonly row: number;
  readonly step: JobStep;
  readonly columns: SlotColumns | null;
}

/**
 * Says what may be typed where: lists by the kind of the record, names of units of sizes, dates.
 *
 * Where anything else than the list may be meant it is remarked on, not refused.
 */
export function entryValidations(steps: readonly PlacedStep[], stepRows: RowSpan, snagRows: RowSpan): Validation[] {
  const sizeRows = steps.filter(({ step: { expectation } }) => kindsOnTab[expectation.kind].hasSeenUnit).map(({ row }) => row);
  const allow = (column: TabColumn, rows: RowSpan, rule: EntryRule): Validation => ({ area: areaOf(column, rows), ...rule });
  return [
    ...slotColumns.flatMap(({ found }) => foundValidations(found, steps)),
    ...sizeRows.map((row) => allow("unit", { first: row, last: row }, unit)),
    ...listSpans(steps, stepRows).map((rows) => allow("done", rows, day)),
    allow(snagColumns.closed, snagRows, snagEnd),
    allow(snagColumns.byWhen, snagRows, day),
  ];
}

/** Says what may be typed into a column of Found. Neighbouring rows that ask for the same share one entry: a sheet takes only so many. */
function foundValidations(column: TabColumn, steps: readonly PlacedStep[]): Validation[] {
  const runs: { readonly first: number; last: number; readonly text: string; readonly rule: EntryRule }[] = [];
  for (const { row, step, columns } of steps) {
    const rule = (columns?.found ?? "found") === column ? kindsOnTab[step.expectation.kind].entryRule(step.expectation.choices) : null;
    if (rule === null) continue;
    const text = JSON.stringify(rule);
    const above = runs.at(-1);
    if (above?.text === text && above.last === row - 1) above.last = row;
    else runs.push({ first: row, last: row, text, rule });
  }
  return runs.map(({ rule, ...rows }) => ({ area: areaOf(column, rows), ...rule }));
}

/** Finds the rows that are none of a grid, between which the block of steps is parted. */
function listSpans(steps: readonly PlacedStep[], { first, last }: RowSpan): RowSpan[] {
  const gridRows = [...new Set(steps.filter(({ columns }) => columns !== null).map(({ row }) => row))];
  const ends = [first - 1, ...gridRows, last + 1];
  return ends.slice(1).flatMap((end, index): RowSpan[] => (end - ends[index]! > 1 ? [{ first: ends[index]! + 1, last: end - 1 }] : []));
}

function areaOf(column: TabColumn, { first, last }: RowSpan): Area {
  return { row: first, column: at[column], rows: last - first + 1, columns: 1 };
}
