import { canonicalText } from "../../text";
import type { SnagRecord, StepRecord, TabReading } from "./tab-reading";

/** Something that stands in the way of closing a tab. */
export interface OpenItem {
  readonly row: number;
  readonly sentence: string;
}

/**
 * Lists what stands in the way of closing a tab; none where it can be closed.
 *
 * Every required step must be as expected and signed, or waived or not applicable with name and reason; a waiver may stand in a snag
 * that somebody accepted by name. Every snag must be closed or accepted by name. A step may not be typed over, doubled or missing.
 */
export function openItems(tab: TabReading): OpenItem[] {
  const seen = new Set<string>();
  const doubled = tab.steps.filter(({ key }) => seen.has(key) || !seen.add(key));
  const numbers = new Set(tab.steps.map(({ no }) => Number(no)));
  const most = tab.steps.reduce((highest, { no }) => Math.max(highest, Number(no) || 0), 0);
  const missing = Array.from({ length: most }, (_, index) => index + 1).filter((no) => !numbers.has(no));
  return [
    ...tab.steps.flatMap((step) => itemOf(step, reasonOpen(tab, step))),
    ...doubled.map(({ row, no }) => ({ row, sentence: `No. ${no} stands twice. Delete the copy of the row.` })),
    ...missing.map((no) => ({ row: tab.places.headerRow, sentence: `No. ${no} is missing. Build the tab again: its row comes back.` })),
    ...tab.snags.flatMap((snag) => (isSnagClosed(snag) ? [] : [{ row: snag.row, sentence: `The snag in row ${snag.row + 1} is open. Write Closed or Accepted, and a name under By.` }])),
  ];
}

function itemOf({ row, no, stepId }: StepRecord, reason: string): OpenItem[] {
  return reason === "" ? [] : [{ row, sentence: `No. ${no} ${stepId} ${reason}` }];
}

function reasonOpen(tab: TabReading, step: StepRecord): string {
  const { result, typed, sign, required, isComputed } = step;
  if (!isComputed) return "has something typed over its Result. Build the tab again: the formula comes back.";
  if (result === "Check again") return "asks to be seen again: its expectation has changed.";
  if (!required) return "";
  const isNamed = canonicalText(typed.by) !== "";
  switch (result) {
    case "As expected":
      return sign === "none" || isNamed ? "" : "wants a name under By.";
    case "Waived":
    case "Not applicable":
      return (isNamed && canonicalText(typed.note) !== "") || acceptedBySnag(tab, step) ? "" : "wants a name under By and a reason in Note.";
    case "":
      return "is not done. Type what was found.";
    default:
      return `says ${result}. Put it right, or waive it with name and reason.`;
  }
}

function acceptedBySnag({ snags }: TabReading, { key }: StepRecord): boolean {
  const last = snags.filter((snag) => snag.key === key).at(-1);
  return last?.typed.result === "Accepted" && isSnagClosed(last);
}

/** Tells whether a snag is closed or accepted, by name. */
export function isSnagClosed({ typed }: SnagRecord): boolean {
  return (typed.result === "Closed" || typed.result === "Accepted") && canonicalText(typed.by) !== "";
}
