import { foldName } from "../../text";
import { invalid, quote } from "../../text";
import type { PlanRow } from "../../plan/read";
import { conditionHolds, parseCondition } from "../../text";
import { parseExpectation, type Expectation } from "../procedure";
import type { FeedLoads } from "../../plan/model";
import { placesOf, type JobPlaces } from "../../plan/model";
import type { PlanLookup } from "../../plan/model";
import { lookupIn, planCellOf, type PlanCell } from "../../plan/subjects";
import { JobSubjects } from "../../plan/subjects";
import { fillTemplate, parseTemplate } from "../../text";

/** How many names sign for a step. */
export type Sign = "none" | "one" | "two";

/** One step of a job for one subject, filled. */
export interface JobStep {
  /** job id / step id / subject id: what a record is kept by. */
  readonly key: string;
  readonly stepId: string;
  readonly do: string;
  readonly caution: string;
  readonly makersGuide: string;
  /** What the step is for. */
  readonly subject: string;
  readonly expectation: Expectation;
  readonly unit: string;
  readonly required: boolean;
  readonly sign: Sign;
  readonly minutes: number;
  /** Cell of the plan that is expected as it stands, so that what was found can be written back to it; else null. */
  readonly planCell: PlanCell | null;
}

/** A section of a job with the steps that are done in it, subject by subject. */
export interface JobSection {
  readonly title: string;
  readonly steps: readonly JobStep[];
}

/** A job worked out: where, about what, and every step in order. */
export interface ExpandedJob {
  readonly id: string;
  readonly job: PlanRow<"jobs">;
  readonly places: JobPlaces;
  readonly sections: readonly JobSection[];
}

/** Names a job for good: by its id, and by its name as long as set-up has given it none. */
export function idOfJob({ id, job }: PlanRow<"jobs">): string {
  return id === "" ? `~${foldName(job)}` : id;
}

/** Longest text a cell takes. */
const longestText = 32_767;

/**
 * Works out every step of a job.
 *
 * Sections come in table order; within one, all steps for the first subject, then for the second. Sections without a step are left out.
 * Refuses a procedure nobody has, a step id that stands twice, a step in a section that is not the procedure's, a job without arrays
 * where a section is about them, and every text, condition or expectation that cannot be filled.
 */
export function expandJob(lookup: PlanLookup, loads: FeedLoads, job: PlanRow<"jobs">): ExpandedJob {
  const sections = lookup.rowsWhere("procedures", "procedure", job.procedure);
  if (job.procedure === "" || sections.length === 0) {
    throw invalid("Procedure", job.procedure, `Job ${quote(job.job)} follows procedure ${quote(job.procedure)}, which the table Procedures does not have. Write one of its procedures.`);
  }
  const steps = stepsBySection(lookup.rowsWhere("steps", "procedure", job.procedure), sections);
  const places = placesOf(lookup, job);
  if (places.arrays.length === 0 && sections.some(({ forEach }) => forEach !== "" && forEach !== "site")) {
    throw invalid("Arrays", job.arrays, `Job ${quote(job.job)} has no arrays: none stands at ${quote(job.site)}. Fill the table Arrays, or name them in the job.`);
  }
  const subjects = new JobSubjects(lookup, places, loads, job);
  const id = idOfJob(job);
  const worked = sections.map((section): JobSection => {
    const condition = parseCondition(section.when, `Section ${section.section}`);
    const templates = (steps.get(foldName(section.section)) ?? []).map(prepareStep);
    const chosen = templates.length === 0 ? [] : subjects.list(section.forEach);
    return {
      title: section.section,
      steps: chosen.flatMap((subject) => {
        if (!conditionHolds(condition, lookupIn(subject.scope, `Section ${section.section}`))) return [];
        return templates.flatMap(({ row, when, fill, only }): JobStep[] => {
          const argument = `Step ${row.stepId}`;
          const look = lookupIn(subject.scope, argument);
          if (!conditionHolds(when, look)) return [];
          const expect = fillTemplate(fill.expect, look);
          const step = {
            key: `${id}/${row.stepId}/${subject.id}`,
            stepId: row.stepId,
            do: fillTemplate(fill.do, look),
            caution: fillTemplate(fill.caution, look),
            makersGuide: fillTemplate(fill.makersGuide, look),
            subject: subject.label,
            expectation: parseExpectation(row, expect.trim(), argument),
            unit: row.unit,
            required: row.required,
            sign: row.sign === "two" || row.sign === "none" ? row.sign : "one",
            minutes: row.minutes ?? 0,
            planCell: only === null ? null : planCellOf(subject.scope, only),
          } as const;
          const longest = step.do.length + step.caution.length + step.makersGuide.length + 60;
          if (Math.max(longest, expect.length) > longestText) throw invalid(argument, longest, `${argument} has ${longest} characters when filled; a cell takes ${longestText}. Shorten it.`);
          return [step];
        });
      }),
    };
  });
  return { id, job, places, sections: worked.filter(({ steps: done }) => done.length > 0) };
}

function stepsBySection(steps: readonly PlanRow<"steps">[], sections: readonly PlanRow<"procedures">[]): ReadonlyMap<string, readonly PlanRow<"steps">[]> {
  const known = new Map<string, PlanRow<"steps">[]>();
  for (const { section } of sections) {
    if (known.has(foldName(section))) throw invalid("Section", section, `Section ${quote(section)} stands twice in its procedure. Give each section a name of its own.`);
    known.set(foldName(section), []);
  }
  const ids = new Set<string>();
  for (const step of steps) {
    const id = foldName(step.stepId);
    if (ids.has(id)) throw invalid("Step id", step.stepId, `Step id ${quote(step.stepId)} stands twice. Records are kept by it: give one of the steps a new id.`);
    ids.add(id);
    const section = known.get(foldName(step.section));
    if (section === undefined) {
      throw invalid("Section", step.section, `Step ${step.stepId} is in section ${quote(step.section)}, which its procedure lacks. Add the section to Procedures.`);
    }
    section.push(step);
  }
  return known;
}

function prepareStep(row: PlanRow<"steps">) {
  const argument = `Step ${row.stepId}`;
  const expect = parseTemplate(row.expect, argument);
  const [first] = expect;
  return {
    row,
    when: parseCondition(row.when, argument),
    only: expect.length === 1 && first !== undefined && "name" in first ? first.name : null,
    fill: {
      do: parseTemplate(row.do, argument),
      expect,
      caution: parseTemplate(row.caution, argument),
      makersGuide: parseTemplate(row.makersGuide, argument),
    },
  };
}
