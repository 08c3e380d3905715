import type { Area, Validation } from "../../../sheet";
import { seenUnits } from "../procedure";
import type { JobStep } from "../job";
import { at, type TabColumn } from "./tab-columns";
import type { RowSpan } from "./tab-formulas";

/** What may be typed in place of a record. */
export const insteadOfRecord = ["Not applicable", "Waived"] as const;

/** Longest list of choices that a sheet takes. */
const longestList = 255;

/**
 * Says what may be typed where: lists by the kind of the record, names of units of sizes, dates.
 *
 * Neighbouring rows that ask for the same share one entry. Where anything else than the list may be meant it is remarked on, not refused.
 * Only the rows `asked` ask to be seen again.
 */
export function foundValidations(steps: ReadonlyMap<number, JobStep>, asked: readonly number[], stepRows: RowSpan, snagRows: RowSpan): Validation[] {
  const validations: Validation[] = [];
  let open: { readonly column: TabColumn; readonly first: number; readonly text: string; readonly rule: Rule; last: number } | null = null;
  const close = (): void => {
    if (open !== null) validations.push({ area: area(open.column, open.first, open.last), ...open.rule });
    open = null;
  };
  for (let row = stepRows.first; row <= stepRows.last; row += 1) {
    const step = steps.get(row);
    const rule = step === undefined ? null : ruleOf(step);
    const text = JSON.stringify(rule);
    if (open !== null && open.text === text && open.last === row - 1) {
      open.last = row;
      continue;
    }
    close();
    if (rule !== null) open = { column: "found", first: row, last: row, text, rule };
  }
  close();
  for (const [row, step] of steps) {
    if (step.expectation.kind === "size") validations.push({ area: area("unit", row, row), rule: { kind: "list", items: Object.keys(seenUnits) }, message: "Choose the unit that was seen: TB, TiB or bytes.", strict: true });
  }
  return [
    ...validations,
    ...asked.map((row): Validation => ({ area: area("seenAgain", row, row), rule: { kind: "list", items: ["Yes"] }, message: "Choose Yes once the new expectation has been looked at.", strict: true })),
    { area: area("done", stepRows.first, stepRows.last), rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false },
    { area: area("result", snagRows.first, snagRows.last), rule: { kind: "list", items: ["Closed", "Accepted"] }, message: "Choose Closed once it is mended, or Accepted with a name.", strict: true },
    { area: area("expected", snagRows.first, snagRows.last), rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false },
  ];
}

type Rule = Omit<Validation, "area">;

function ruleOf({ expectation: { kind, choices } }: JobStep): Rule | null {
  if (kind === "tick" || kind === "choice") {
    const items = [...(kind === "tick" ? ["Yes", "No"] : choices), ...insteadOfRecord];
    return items.join(",").length > longestList ? null : { rule: { kind: "list", items }, message: "Choose one of the list.", strict: true };
  }
  if (kind === "number" || kind === "size") return { rule: { kind: "number" }, message: "Type a number, or Not applicable or Waived.", strict: false };
  if (kind === "date") return { rule: { kind: "date" }, message: "Type a date, such as 2026-05-31, or Not applicable or Waived.", strict: false };
  return null;
}

function area(column: TabColumn, first: number, last: number): Area {
  return { row: first, column: at[column], rows: last - first + 1, columns: 1 };
}
