import type { PlanModel } from "../../plan/model";
import type { PlanRow, ReadTable } from "../../plan/read";
import { forEachKinds, forEachOf, tables, type ForEach, type LayerName } from "../../plan/schema";
import { JobSubjects, lookupIn, planCellOf } from "../../plan/subjects";
import { canonicalText, conditionHolds, cutSentence, fillTemplate, foldName, invalid, parseCondition, parseTemplate, quote } from "../../text";
import { gridFaults, parseExpectation } from "../procedure";
import { gridSection, type FilledStep } from "./grid-section";
import type { ExpandedJob, JobSection, JobStep, Sign } from "./job-step";
import { visitHeadings } from "./visit-headings";
import { longestText } from "../../../sheet";

/** Names a job for good: by its id, and by its name as long as set-up has given it none; as a tab reads it back. */
export function idOfJob({ id, job }: PlanRow<"jobs">): string {
  return canonicalText(id === "" ? `~${foldName(job)}` : id);
}

/**
 * Works out every step of a job.
 *
 * Sections come in table order; within one, all steps for the first subject, then for the second. Sections without a step are left out.
 * Refuses a procedure nobody has, a step id that stands twice, a step in a section that is not the procedure's, a job without arrays
 * where a section is about them or about what is in them, a section that no grid can show, a step of which nobody can read whether it is a hold point, who signs or on which side a limit is,
 * and every text, condition or expectation that cannot be filled.
 */
export function expandJob(model: PlanModel, job: PlanRow<"jobs">): ExpandedJob {
  const rows = sectionRows(model, job);
  const rowsOfSteps = model.rowsWith("steps", "procedure", job.procedure);
  refuseUnread(model.table("steps"), rowsOfSteps);
  const steps = stepsBySection(rowsOfSteps, rows);
  const places = model.places.of(job);
  if (places.arrays.length === 0 && rows.some(({ forEach }) => isAboutArrays(forEachOf(forEach)))) {
    const sentence = `Job ${quote(job.job)} has no arrays: none stands at ${quote(job.site)}. Fill the table Arrays, or name them in the job.`;
    throw invalid("Arrays", job.arrays, sentence);
  }
  const subjects = new JobSubjects(model, places, job);
  const id = idOfJob(job);
  let visit = "";
  const sections = rows.map((row) => {
    visit = row.visit === "" ? visit : row.visit;
    return { ...expandSection(id, row, steps.get(foldName(row.section)) ?? [], subjects), visit };
  });
  const kinds = [...new Set(rows.map(({ forEach }) => forEachOf(forEach)))];
  return { id, job, places, sections: withHeadings(sections.filter((section) => section.steps.length > 0)), absent: kinds.filter((kind) => subjects.list(kind).length === 0) };
}

/** Gives each section, in place of the name of its visit, the heading that stands above it. */
function withHeadings(sections: readonly JobSection[]): JobSection[] {
  const headings = visitHeadings(sections.map(({ visit }) => visit));
  return sections.map((section, index) => ({ ...section, visit: headings[index]! }));
}

/** Tells whether the subjects of a section come out of the arrays of a job: without arrays it has none. */
function isAboutArrays(forEach: ForEach): boolean {
  const reach: readonly LayerName[] = forEachKinds[forEach].reach;
  return reach.includes("Array") || reach.includes("Cluster");
}

function sectionRows(model: PlanModel, { job, procedure }: PlanRow<"jobs">): readonly PlanRow<"procedures">[] {
  const rows = model.rowsWith("procedures", "procedure", procedure);
  if (rows.length > 0) return rows;
  const sentence = `Job ${quote(job)} follows procedure ${quote(procedure)}, which the table Procedures does not have. Write one of its procedures.`;
  throw invalid("Procedure", procedure, sentence);
}

const { holdPoint, sign, bound } = tables.steps.columns;
/** Headers of what a step asks of people: a word that cannot be read there counts as blank, and so as something else than somebody meant. */
const asking: ReadonlySet<string> = new Set([holdPoint, sign, bound].map(({ header }) => header));

/** Refuses steps of which nobody can tell whether they stop the work, who signs for them, or on which side of a limit a record may lie. */
function refuseUnread(table: ReadTable | null, steps: readonly PlanRow<"steps">[]): void {
  const step = new Map(steps.map((one) => [one.row, one]));
  const fault = table?.faults.find(({ row, header }) => step.has(row) && asking.has(header));
  if (fault === undefined) return;
  const { header, problem: { sentence } } = fault;
  throw invalid(header, null, cutSentence(`Step ${step.get(fault.row)!.stepId}: ${sentence}`));
}

/** Sorts the steps of a procedure into its sections, by the folded name of each. */
function stepsBySection(steps: readonly PlanRow<"steps">[], sections: readonly PlanRow<"procedures">[]): ReadonlyMap<string, readonly PlanRow<"steps">[]> {
  const known = new Map<string, PlanRow<"steps">[]>();
  for (const { section } of sections) {
    if (known.has(foldName(section))) throw invalid("Section", section, `Section ${quote(section)} stands twice in its procedure. Give each section a name of its own.`);
    known.set(foldName(section), []);
  }
  const ids = new Set<string>();
  for (const step of steps) {
    const id = foldName(step.stepId);
    if (ids.has(id)) {
      throw invalid("Step id", step.stepId, `Step id ${quote(step.stepId)} stands twice. Records are kept by it: give one of the steps a new id.`);
    }
    ids.add(id);
    const section = known.get(foldName(step.section));
    if (section === undefined) {
      const sentence = `Step ${step.stepId} is in section ${quote(step.section)}, which its procedure lacks. Add the section to Procedures.`;
      throw invalid("Section", step.section, sentence);
    }
    section.push(step);
  }
  return known;
}

type Subject = ReturnType<JobSubjects["list"]>[number];

/** Works out a section: a step after the other in a list, side by side in a grid. */
function expandSection(jobId: string, row: PlanRow<"procedures">, steps: readonly PlanRow<"steps">[], subjects: JobSubjects): Omit<JobSection, "visit"> {
  const filled = stepsOfSection(jobId, row, steps, subjects);
  if (row.shownAs !== "grid") return { title: row.section, steps: filled.map(({ step }) => step), columns: [] };
  const [fault] = gridFaults(steps);
  if (fault !== undefined) throw invalid("Shown as", row.shownAs, fault.sentence);
  return { ...gridSection(jobId, { title: row.section, stepIds: steps.map(({ stepId }) => stepId), filled }), isPasted: row.forEach === "drive" };
}

/** Fills the steps of a section for one subject after the other. */
function stepsOfSection(jobId: string, row: PlanRow<"procedures">, steps: readonly PlanRow<"steps">[], subjects: JobSubjects): FilledStep[] {
  const name = `Section ${row.section}`;
  const condition = parseCondition(row.when, name);
  const templates = steps.map(prepareStep);
  if (templates.length === 0) return [];
  return subjects.list(row.forEach).flatMap((subject) => {
    if (!conditionHolds(condition, lookupIn(subject.scope, name))) return [];
    return templates.flatMap((template): FilledStep[] => {
      const step = fillStep(jobId, template, subject);
      return step === null ? [] : [{ step, subjectId: subject.id, part: subject.part }];
    });
  });
}

type StepTemplate = ReturnType<typeof prepareStep>;

/** Reads the texts of a step once for all its subjects. */
function prepareStep(row: PlanRow<"steps">) {
  const argument = `Step ${row.stepId}`;
  const expect = parseTemplate(row.expect, argument);
  const [first] = expect;
  return {
    row,
    argument,
    when: parseCondition(row.when, argument),
    /** The field that is expected as it stands; null where a text stands around it, or there are several or none. */
    onlyField: expect.length === 1 && first !== undefined && "name" in first ? first.name : null,
    do: parseTemplate(row.do, argument),
    expect,
    caution: parseTemplate(row.caution, argument),
    makersGuide: parseTemplate(row.makersGuide, argument),
  };
}

/** Fills a step for a subject; null where its condition does not hold. */
function fillStep(jobId: string, template: StepTemplate, subject: Subject): JobStep | null {
  const { row, argument, when, onlyField } = template;
  const lookup = lookupIn(subject.scope, argument);
  if (!conditionHolds(when, lookup)) return null;
  const expect = fillTemplate(template.expect, lookup);
  const step: JobStep = {
    key: canonicalText(`${jobId}/${row.stepId}/${subject.id}`),
    stepId: row.stepId,
    do: fillTemplate(template.do, lookup),
    caution: fillTemplate(template.caution, lookup),
    makersGuide: fillTemplate(template.makersGuide, lookup),
    subject: subject.label,
    expectation: parseExpectation(row, expect.trim(), argument),
    unit: row.unit,
    required: row.required,
    sign: signOf(row),
    holdPoint: row.holdPoint === "yes",
    minutes: row.minutes ?? 0,
    planCell: onlyField === null ? null : planCellOf(subject.scope, onlyField),
    slot: null,
  };
  refuseTooLong(step, expect, argument);
  return step;
}

/** Says how many names sign for a step: one where nothing is said, and never none for a hold point. */
function signOf({ sign, holdPoint }: PlanRow<"steps">): Sign {
  return sign === "" || (sign === "none" && holdPoint === "yes") ? "one" : sign;
}

/** What a tab writes around the texts of a step. */
const wordsAround = 60;

function refuseTooLong(step: JobStep, expect: string, argument: string): void {
  const length = step.do.length + step.caution.length + step.makersGuide.length + wordsAround;
  if (Math.max(length, expect.length) <= longestText) return;
  throw invalid(argument, length, `${argument} has ${length} characters when filled; a cell takes ${longestText}. Shorten it.`);
}
