import type { Area, Validation } from "../../../sheet";
import type { JobStep } from "../job";
import { seenUnits } from "../procedure";
import { snagEnds } from "../record";
import { kindsOnTab, type EntryRule } from "./kind-on-tab";
import { snagColumns } from "./snag-columns";
import { at, type TabColumn } from "./tab-columns";
import type { RowSpan } from "./tab-formulas";

const day: EntryRule = { rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false };
const unit: EntryRule = { rule: { kind: "list", items: Object.keys(seenUnits) }, message: "Choose the unit that was seen: TB, TiB or bytes.", strict: true };
const snagEnd: EntryRule = {
  rule: { kind: "list", items: Object.values(snagEnds) },
  message: `Choose ${snagEnds.closed} once it is mended, or ${snagEnds.accepted} with a name.`,
  strict: true,
};

/**
 * Says what may be typed where: lists by the kind of the record, names of units of sizes, dates.
 *
 * Where anything else than the list may be meant it is remarked on, not refused.
 */
export function entryValidations(steps: ReadonlyMap<number, JobStep>, stepRows: RowSpan, snagRows: RowSpan): Validation[] {
  const sizeRows = [...steps].filter(([, { expectation }]) => kindsOnTab[expectation.kind].hasSeenUnit).map(([row]) => row);
  const allow = (column: TabColumn, rows: RowSpan, rule: EntryRule): Validation => ({ area: areaOf(column, rows), ...rule });
  return [
    ...foundValidations(steps, stepRows),
    ...sizeRows.map((row) => allow("unit", { first: row, last: row }, unit)),
    allow("done", stepRows, day),
    allow(snagColumns.closed, snagRows, snagEnd),
    allow(snagColumns.byWhen, snagRows, day),
  ];
}

/** Says what may be typed into Found. Neighbouring rows that ask for the same share one entry: a sheet takes only so many. */
function foundValidations(steps: ReadonlyMap<number, JobStep>, { first, last }: RowSpan): Validation[] {
  const runs: { readonly first: number; last: number; readonly text: string; readonly rule: EntryRule }[] = [];
  for (let row = first; row <= last; row += 1) {
    const step = steps.get(row);
    const rule = step === undefined ? null : kindsOnTab[step.expectation.kind].entryRule(step.expectation.choices);
    if (rule === null) continue;
    const text = JSON.stringify(rule);
    const above = runs.at(-1);
    if (above?.text === text && above.last === row - 1) above.last = row;
    else runs.push({ first: row, last: row, text, rule });
  }
  return runs.map(({ rule, ...rows }) => ({ area: areaOf("found", rows), ...rule }));
}

function areaOf(column: TabColumn, { first, last }: RowSpan): Area {
  return { row: first, column: at[column], rows: last - first + 1, columns: 1 };
}
