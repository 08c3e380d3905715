import { groupBy } from "../../plan/model";
import type { SubjectPart } from "../../plan/subjects";
import { canonicalText, foldName } from "../../text";
import { mostSlots } from "../procedure";
import type { JobSection, JobStep, Sign } from "./job-step";

/** A step that was filled for a subject. */
export interface FilledStep {
  readonly step: JobStep;
  readonly subjectId: string;
  /** What the subject is a part of; none where it is no part of anything. */
  readonly part?: SubjectPart | undefined;
}

/** A section that is shown as a grid: the ids of all its steps, whether they stand in the job or not, and those that do. */
export interface GridSource {
  readonly title: string;
  readonly stepIds: readonly string[];
  readonly filled: readonly FilledStep[];
}

/** Step id of the steps that sign for grids. */
const signId = "sign";

/**
 * Gives the steps of a section their places in a grid, in the order of the procedure, and closes it with a step that signs for all of them.
 *
 * A signature is known by the ids of all steps of the section, so that it outlives a new name or order of them, and never signs for a step that
 * came to the section since.
 */
export function gridSection(jobId: string, { title, stepIds: signedFor, filled }: GridSource): Omit<JobSection, "visit"> {
  if (filled.length === 0) return { title, steps: [], columns: [] };
  const sign = signOf(filled.map(({ step }) => step.sign));
  const signKey = sign === "none" ? "" : canonicalText(`${jobId}/${signId}/${signedFor.map(foldName).sort().join("+")}`);
  const slots = [...groupBy(placed(filled), ({ rowId }) => rowId).values()].flatMap((row) => [...row].sort((a, b) => a.place - b.place))
    .map(({ step, ...slot }): JobStep => ({ ...step, slot: { ...slot, signKey } }));
  const columns = groupBy(slots, ({ slot, stepId }) => `${slot!.place} ${stepId}`);
  return {
    title,
    steps: sign === "none" ? slots : [...slots, signStep(signKey, title, sign, slots.some(({ required }) => required))],
    columns: [...columns.values()].map(([first]) => first!).sort((a, b) => a.slot!.place - b.slot!.place),
  };
}

type PlacedStep = Omit<NonNullable<JobStep["slot"]>, "signKey"> & { readonly step: JobStep };

/**
 * Gives each step its row and its place there: a row a subject, with its steps side by side. Where a row holds all subjects, or all that they are
 * parts of, as arrays with their bays, and that takes no more rows, these stand side by side instead: every step of every part has a row.
 */
function placed(filled: readonly FilledStep[]): PlacedStep[] {
  const stepIds = [...new Set(filled.map(({ step }) => step.stepId))];
  const wholes = [...new Set(filled.map(wholeOf))];
  const heads = withoutSharedWords(wholes);
  if (wholes.length < Math.max(2, stepIds.length) || wholes.length > mostSlots) {
    return filled.map(({ step, subjectId }) => ({ step, rowId: subjectId, label: step.subject, place: stepIds.indexOf(step.stepId), head: step.stepId }));
  }
  const seen = new Map<string, number>();
  return filled.map((one) => {
    const { step, part: { name } = { name: "" } } = one;
    const whole = wholeOf(one);
    const place = wholes.indexOf(whole);
    // Parts that are called alike within one stand in rows of their own.
    const called = `${name}\n${step.stepId}`;
    const count = (seen.get(`${whole}\n${called}`) ?? 0) + 1;
    seen.set(`${whole}\n${called}`, count);
    const label = [name === "" ? "Each" : name, step.unit].filter((text) => text !== "").join(", ");
    return { step, rowId: `${called}\n${count}`, label, place, head: heads[place]! };
  });
}

/** Leaves out the words with which all of some names begin, but for the last of them: `array 1` of Map Store array 1 beside Map Store array 2. */
function withoutSharedWords(names: readonly string[]): string[] {
  const words = names.map((name) => name.split(" "));
  const shared = words[0]!.findIndex((word, index) => words.some((other) => other[index] !== word));
  return words.map((own) => own.slice(Math.max(0, shared - 1)).join(" "));
}

/** Names the array or host that a subject is a part of; the subject where it is none. */
function wholeOf({ step, part }: FilledStep): string {
  return part?.of ?? step.subject;
}

/** Finds the most names that one of some steps asks for. */
function signOf(signs: readonly Sign[]): Sign {
  return signs.includes("two") ? "two" : signs.includes("one") ? "one" : "none";
}

function signStep(key: string, title: string, sign: Sign, required: boolean): JobStep {
  return {
    key,
    stepId: signId,
    do: "Sign for all rows above.",
    caution: "",
    makersGuide: "",
    subject: title,
    expectation: { kind: "tick", choices: [], shown: "Every row filled", wanted: null },
    unit: "",
    required,
    sign,
    holdPoint: false,
    minutes: 0,
    planCell: null,
    slot: null,
  };
}
