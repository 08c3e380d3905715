import { canonicalText } from "../../text";
import type { JobRecords } from "./job-records";
import { results } from "./result";
import { isSnagClosed, snagEndOf, snagEnds, snagName } from "./snag";
import type { StepRecord } from "./step-record";

/** Something that stands in the way of closing a tab. */
export interface OpenItem {
  readonly row: number;
  readonly sentence: string;
  /** What a snag says under *What was found* to accept it as it is; an item without can only be put right. */
  readonly fact?: string;
}

/**
 * Lists what stands in the way of closing a tab; none where it can be closed.
 *
 * Every required step must be as expected and signed, or waived or not applicable with name and reason; a waiver may stand in a snag
 * that somebody accepted by name. Every snag must be closed or accepted by name. A step may not be doubled or missing.
 */
export function openItems(records: JobRecords): OpenItem[] {
  const { steps, snags, headerRow } = records;
  const most = steps.reduce((highest, { no }) => Math.max(highest, Number(no) || 0), 0);
  return [
    ...steps.flatMap((step): OpenItem[] => {
      const reason = reasonOpen(records, step);
      return reason === "" ? [] : [{ row: step.row, sentence: `No. ${step.no} ${step.stepId} ${reason}` }];
    }),
    ...doubledSteps(steps).map(({ row, no }) => ({ row, sentence: `No. ${no} stands twice. Delete the copy of the row.` })),
    ...missingNumbers(steps, most).map((no) => ({ row: headerRow, sentence: `No. ${no} is missing. Build the tab again: its row comes back.` })),
    ...snags.filter((snag) => !isSnagClosed(snag)).map((snag) => ({
      row: snag.row,
      sentence: `${capitalised(snagName(snag))} is open. Write ${snagEnds.closed} or ${snagEnds.accepted}, and a name under By.`,
    })),
  ];
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Writes a fact as the one line that it is of a snag, whatever stands in the names in it. */
export function factLine(fact: string): string {
  return canonicalText(fact).replace(/\s+/g, " ");
}

/** Leaves out the items that a snag, accepted by name, takes as they are: one line of it each. */
export function withoutAccepted<Item extends OpenItem>(items: readonly Item[], { snags }: Pick<JobRecords, "snags">): Item[] {
  const accepting = snags.filter((snag) => isSnagClosed(snag) && snagEndOf(snag) === snagEnds.accepted);
  const accepted = new Set(accepting.flatMap(({ typed }) => canonicalText(typed.foundWrong).split("\n").map(factLine)));
  return items.filter(({ fact }) => fact === undefined || !accepted.has(factLine(fact)));
}

function doubledSteps(steps: readonly StepRecord[]): StepRecord[] {
  const seen = new Set<string>();
  return steps.filter(({ key }) => seen.has(key) || !seen.add(key));
}

/** Lists the numbers from 1 to `most` that no step has. */
export function missingNumbers(steps: readonly StepRecord[], most: number): number[] {
  const numbers = new Set(steps.map(({ no }) => Number(no)));
  return Array.from({ length: most }, (_, index) => index + 1).filter((no) => !numbers.has(no));
}

function reasonOpen(records: JobRecords, step: StepRecord): string {
  const { result, slot, typed, sign, required } = step;
  if (result === results.checkAgain) return "asks to be seen again: its expectation has changed.";
  if (!required) return "";
  if (slot !== null && result !== null && result !== results.asExpected) return `says ${result} in a grid. Put it right, or build the tab again: it gets a row of its own.`;
  const isNamed = canonicalText(typed.by) !== "";
  switch (result) {
    case results.asExpected:
      return sign === "none" || isNamed ? "" : "wants a name under By.";
    case results.waived:
    case results.notApplicable:
      return (isNamed && canonicalText(typed.note) !== "") || isAcceptedBySnag(records, step) ? "" : "wants a name under By and a reason in Note.";
    case null:
      return "is not done. Type what was found.";
    default:
      return `says ${result}. Put it right, or waive it with name and reason.`;
  }
}

function isAcceptedBySnag({ snags }: JobRecords, { key }: StepRecord): boolean {
  const last = snags.filter((snag) => snag.key === key).at(-1);
  return last !== undefined && snagEndOf(last) === snagEnds.accepted && isSnagClosed(last);
}
