import { canonicalText, foldName } from "../../text";
import type { JobSection, JobStep, Sign } from "./job-step";

/** A step that was filled for a subject. */
export interface FilledStep {
  readonly step: JobStep;
  readonly subjectId: string;
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
  const columns = new Map<string, JobStep>();
  for (const { step } of filled) if (!columns.has(step.stepId)) columns.set(step.stepId, step);
  const stepIds = [...columns.keys()];
  const sign = signOf(filled.map(({ step }) => step.sign));
  const signKey = sign === "none" ? "" : canonicalText(`${jobId}/${signId}/${signedFor.map(foldName).sort().join("+")}`);
  const slots = filled.map(({ step, subjectId }): JobStep => ({ ...step, slot: { subjectId, place: stepIds.indexOf(step.stepId), signKey } }));
  return {
    title,
    steps: sign === "none" ? slots : [...slots, signStep(signKey, title, sign, slots.some(({ required }) => required))],
    columns: [...columns.values()],
  };
}

/** Finds the most names that one of some steps asks for. */
function signOf(signs: readonly Sign[]): Sign {
  return signs.includes("two") ? "two" : signs.includes("one") ? "one" : "none";
}

function signStep(key: string, title: string, sign: Sign, required: boolean): JobStep {
  return {
    key,
    stepId: signId,
    do: `Sign here for every row above: By, Witness and Done of this row stand for all of ${title}.`,
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
