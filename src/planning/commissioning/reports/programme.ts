import { foldName, splitNames } from "../../text";
import { comesAfter, groupBy, oncePer, orNull, type PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import type { JobProgress } from "./progress";

/** A job with how far it is, and what its steps plan. */
export interface PlannedWork {
  readonly job: PlanRow<"jobs">;
  readonly progress: JobProgress;
  /** Minutes of all its steps; null where they cannot be worked out. */
  readonly minutes: number | null;
  /** Why its tab cannot be built, or be read as it was built; "" where it can. */
  readonly fault: string;
}

/** A line of the programme board. */
export interface ProgrammeLine {
  readonly job: PlanRow<"jobs">;
  readonly state: "planned" | "built" | "under way" | "closed";
  /** What keeps it from being begun or gone on with, most of all first; none where nothing does. */
  readonly blockedBy: readonly string[];
  /** True where its day is past and it is not closed. */
  readonly isLate: boolean;
  readonly minutesPlanned: number | null;
  /** Minutes planned for the steps that are settled. */
  readonly minutesSettled: number;
  readonly snags: number;
}

/**
 * Lists the jobs of a plan by day, then by crew, with what blocks each: jobs that come before, what keeps its tab from being built, parts that have not come, a day or
 * a crew that is missing, and a crew that is at two sites on one day. Jobs without a day come last; what is closed is blocked by nothing.
 */
export function programmeOf(model: PlanModel, works: readonly PlannedWork[], today: string): ProgrammeLine[] {
  const isClosed = ({ job, progress }: PlannedWork): boolean => progress.state === "closed" || job.state === "closed";
  const open = works.filter((work) => !isClosed(work));
  const byCrewAndDay = groupBy(open.filter(({ job }) => job.crew !== "" && job.plannedDate !== null), ({ job }) => crewAndDay(job));
  const before = new Map(works.map((work) => [foldName(work.job.job), work]));

  const openBefore = oncePer(({ job }: PlannedWork) => splitNames(job.after).flatMap((name) => before.get(foldName(name)) ?? []).filter((work) => !isClosed(work)));

  const blocksOf = (blocked: PlannedWork): string[] => {
    const { job, fault } = blocked;
    const waits = splitNames(job.after).flatMap((name) => {
      const work = before.get(foldName(name));
      if (work === undefined) return [`after ${name}, which is no job`];
      return isClosed(work) ? [] : [comesAfter(work, blocked, openBefore) ? `after ${work.job.job}, which waits for it in turn` : `after ${work.job.job}`];
    });
    const elsewhere = (byCrewAndDay.get(crewAndDay(job)) ?? []).find((other) => foldName(other.job.site) !== foldName(job.site));
    const missing = missingParts(model, job);
    return [
      ...waits,
      ...(fault === "" ? [] : [fault]),
      ...(missing === 0 ? [] : [`${missing} ${missing === 1 ? "part" : "parts"} missing`]),
      ...(job.plannedDate === null ? ["no day planned"] : []),
      ...(job.crew === "" ? ["no crew"] : elsewhere === undefined ? [] : [`${job.crew} is at ${elsewhere.job.site} on that day too`]),
    ];
  };

  const lines = works.map((work): ProgrammeLine => {
    const { job, progress, minutes } = work;
    const state = isClosed(work) ? "closed" : progress.state === "no tab" ? "planned" : progress.done === 0 ? "built" : "under way";
    return {
      job, state,
      blockedBy: state === "closed" ? [] : blocksOf(work),
      isLate: state !== "closed" && job.plannedDate !== null && job.plannedDate < today,
      minutesPlanned: minutes,
      minutesSettled: progress.state === "no tab" || minutes === null ? 0 : minutes - progress.minutesLeft,
      snags: progress.snags,
    };
  });
  // ISO dates stand in the order of their letters; what has none comes behind them.
  const orderOf = ({ job }: ProgrammeLine): string => `${job.plannedDate ?? "~"}\n${foldName(job.crew)}`;
  return lines.map((line) => ({ line, order: orderOf(line) })).sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0)).map(({ line }) => line);
}

function crewAndDay({ crew, plannedDate }: PlanRow<"jobs">): string {
  return crew === "" || plannedDate === null ? "" : `${plannedDate}\n${foldName(crew)}`;
}

/** Counts the parts that have not come for the arrays of a job, where they are known, or for its site; none in a plan without Parts. */
function missingParts(model: PlanModel, job: PlanRow<"jobs">): number {
  const places = new Set([job.site, ...(orNull(() => model.places.of(job)) ?? { arrays: [] }).arrays.map(({ array }) => array)].filter((name) => name !== "").map(foldName));
  const missing = model.rows("parts").filter(({ part, for: goesTo, came }) => part !== "" && came === null && [goesTo, ...splitNames(goesTo)].some((name) => places.has(foldName(name))));
  return missing.reduce((sum, { quantity }) => sum + (quantity ?? 1), 0);
}
