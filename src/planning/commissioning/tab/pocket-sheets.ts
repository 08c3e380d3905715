import type { Cell } from "../../../sheet";
import { idOfArray } from "../../plan/subjects";
import type { ExpandedJob, JobStep } from "../job";
import { arrayIn } from "../record";
import { fact, summaryTable, type SummaryRow } from "./summary-row";

/** A block that is cut out and carried along. */
export interface PocketSheet {
  readonly title: string;
  readonly rows: readonly SummaryRow[];
}

const columns = [
  { label: "No.", from: "no", to: "no" },
  { label: "Step id", from: "stepId", to: "stepId" },
  { label: "Nothing further before this", from: "step", to: "step" },
  { label: "For", from: "subject", to: "subject" },
  { label: "Expected", from: "expected", to: "expected" },
  { label: "Signed by", from: "unit", to: "unit" },
] as const;

/**
 * Plans a pocket sheet for the site and one for each array that has any: their hold points in the order of the work, by the numbers of their rows.
 *
 * Nothing is filled in there: a hold point is signed in its own row.
 */
export function pocketSheets({ id, places: { site, arrays }, sections }: ExpandedJob, numberOf: (step: JobStep) => number): PocketSheet[] {
  const arrayOf = arrayIn(id);
  const sheets = new Map<string | null, JobStep[]>();
  for (const step of sections.flatMap(({ steps }) => steps).filter(({ holdPoint }) => holdPoint)) {
    const array = arrayOf(step);
    sheets.set(array, [...(sheets.get(array) ?? []), step]);
  }
  const nameOf = new Map<string | null, string>([[null, site.site], ...arrays.map((array) => [idOfArray(array), array.array] as const)]);
  return [...sheets].map(([array, steps]) => ({
    title: `Pocket sheet: hold points of ${nameOf.get(array) ?? steps[0]!.subject}`,
    rows: summaryTable(columns, steps.map((step) => lineOf(step, numberOf(step)))),
  }));
}

function lineOf({ stepId, do: what, subject, expectation, sign }: JobStep, no: number): Cell[] {
  return [
    { value: no, style: "holdPoint" },
    { value: stepId, style: "holdPointId" },
    fact(what),
    fact(subject),
    fact(expectation.shown),
    fact(sign === "two" ? "two names" : "one name"),
  ];
}
