import { jobNamed, jobsOf, readPlanOfTabs, type BuildMoment } from "../planning/commissioning/build";
import { idOfJob } from "../planning/commissioning/job";
import { invalid } from "../planning/text";
import type { WorkbookPort } from "../workbook/port";
import { giveIds } from "./give-ids";
import { formulasLooking } from "./looking-formulas";
import { putTab, type JobOutcome } from "./put-tab";

export type { JobOutcome } from "./put-tab";

/** How far a run is. */
export interface BuildProgress {
  readonly done: number;
  readonly all: number;
  readonly outcome: JobOutcome;
}

/**
 * Builds the tabs of the named jobs, or of every job that is not closed, one after the other; yields after each.
 *
 * Arrays and jobs without an id get one first. Whoever drives it stops it by not asking for the next one: tabs are whole at every yield. A job that fails does not stop the others.
 * Throws a `Problem` where the plan itself cannot be read or a name is no job.
 */
export async function* buildTabs(port: WorkbookPort, moment: BuildMoment, names?: readonly string[]): AsyncGenerator<BuildProgress, void, undefined> {
  const { plan, tabsOf, lookingAt } = await readBefore(port);
  let source = plan;
  const jobs = names === undefined ? jobsOf(source).filter(({ state }) => state !== "closed") : names.map((name) => jobNamed(source, name));
  if (jobs.length === 0) throw invalid("Jobs", null, "The table Jobs has no job to build. Write one row a piece of work: its name, site and procedure.");
  for (const [index, job] of jobs.entries()) {
    const own = tabsOf(idOfJob(job));
    const { outcome, sheets } = await putTab(port, source, job, moment, { tabs: own, lookingAt });
    source = { ...source, sheets };
    yield { done: index + 1, all: jobs.length, outcome };
  }
}

/** Reads what is known before the first job: of the workbook itself nothing is held while tabs are built. */
async function readBefore(port: WorkbookPort) {
  const workbook = await giveIds(port);
  return { ...readPlanOfTabs(workbook), lookingAt: formulasLooking(workbook) };
}
