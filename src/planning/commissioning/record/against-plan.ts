import { showCell } from "../../../sheet";
import { canonicalText } from "../../text";
import { stepWords, type ExpandedJob, type JobStep, type Sign } from "../job";
import type { Wanted } from "../procedure";
import { missingNumbers, type OpenItem } from "./close-out";
import type { JobRecords } from "./job-records";
import type { StepRecord } from "./step-record";
import { answersOf } from "./twin";

/**
 * Lists where a tab says something else than the plan as it is now: a step whose words, expectation, names or need have changed, in the plan
 * or on the tab, one that the plan no longer has, and one that it has now.
 */
export function outdatedItems(records: JobRecords, { sections }: Pick<ExpandedJob, "sections">): OpenItem[] {
  const { steps, headerRow } = records;
  const planned = new Map(sections.flatMap((section) => section.steps.map((step) => [step.key, step] as const)));
  const there = new Set(steps.map(({ key }) => key));
  const changed = steps.flatMap((record): OpenItem[] => {
    const step = planned.get(record.key);
    const what = step === undefined ? "is no step of the plan any more" : changeOf(record, step);
    return what === "" ? [] : [outdated(record.row, `No. ${record.no} ${record.stepId} ${what}.`)];
  });
  // A row that was deleted is named by its number.
  const isWhole = missingNumbers(steps, steps.reduce((most, { no }) => Math.max(most, Number(no) || 0), 0)).length === 0;
  const added = isWhole ? [...planned.values()].filter(({ key }) => !there.has(key)) : [];
  return [...changed, ...added.map((step) => outdated(headerRow, `The plan has step ${step.stepId} for ${step.subject}, the tab has not.`))];
}

function outdated(row: number, fact: string): OpenItem {
  return { row, fact, sentence: `${fact} Build the tab again.` };
}

function changeOf(record: StepRecord, step: JobStep): string {
  const { expectation } = step;
  const isSame = (shown: string, planned: string): boolean => canonicalText(shown) === canonicalText(planned);
  if (!isSame(record.expected, expectation.shown)) return "expects something else than the plan";
  const isComparedAlike = record.kind === expectation.kind && wantedText(record.wanted) === wantedText(expectation.wanted);
  if (!isComparedAlike || !isSame(record.plannedUnit, step.unit)) return "is compared with something else than the plan says";
  const isAskedAlike = record.required === step.required && record.sign === signAsked(record, step) && record.holdPoint === step.holdPoint;
  if (!isAskedAlike) return "asks for other names than the plan, or is no longer asked for as there";
  if (!isSame(record.step, stepWords(step)) || !isSame(record.subject, step.subject) || !isSame(record.stepId, step.stepId)) return "says something else than the plan";
  return "";
}

/** Says how many names sign in the row of a record: none in a grid, which has a row of its own for them. */
function signAsked({ slot }: StepRecord, { sign }: JobStep): Sign {
  return slot === null ? sign : "none";
}

/** Writes what is compared with as one text; numbers at 15 digits, as other programs store them. */
function wantedText(wanted: Wanted | null): string {
  if (wanted === null) return "";
  if (wanted.by === "range") return [wanted.least, wanted.most].map(showCell).join("\n");
  return (wanted.by === "text" ? [wanted.text] : [wanted.canonical, wanted.full]).map((text) => canonicalText(text)).join("\n");
}

/** Judges every record by what the plan expects now, whatever the tab says of it; a step that the plan does not have is judged by the tab. */
export function judgedByPlan<Records extends JobRecords>(records: Records, { sections }: Pick<ExpandedJob, "sections">): Records {
  const planned = new Map(sections.flatMap((section) => section.steps.map((step) => [step.key, step] as const)));
  const steps = records.steps.map((record): StepRecord => {
    const step = planned.get(record.key);
    if (step === undefined) return record;
    const { expectation: { kind, shown, wanted }, required, holdPoint } = step;
    const asked = { ...record, kind, wanted, expected: shown, required, holdPoint, sign: signAsked(record, step) };
    const { result, settled } = answersOf(asked, records.snags);
    return { ...asked, result: result === "" ? null : result, settled: settled === 1 };
  });
  return { ...records, steps };
}

/** Takes for hold points also what the plan as it is now makes one: a tab that was built before that does not say so yet. */
export function heldByPlan<Records extends JobRecords>(records: Records, { sections }: Pick<ExpandedJob, "sections">): Records {
  const held = new Set(sections.flatMap((section) => section.steps.flatMap(({ key, holdPoint }) => (holdPoint ? [key] : []))));
  return { ...records, steps: records.steps.map((step) => (held.has(step.key) ? { ...step, holdPoint: true } : step)) };
}
