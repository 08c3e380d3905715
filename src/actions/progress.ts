import { jobsOf, readCommissioningPlan, refuseJob, type CommissioningPlan } from "../planning/commissioning/build";
import { expandJob, idOfJob } from "../planning/commissioning/job";
import { isClosed, judgedByPlan, rowsOfSteps } from "../planning/commissioning/record";
import { tabFamily, type TabReading } from "../planning/commissioning/tab";
import { planProgramme, planProgress, programmeMark, programmeOf, progressMark, progressOf, type JobProgress, type PlannedWork } from "../planning/commissioning/reports";
import type { PlanRow } from "../planning/plan/read";
import { Problem } from "../planning/text";
import type { WorkbookPort } from "../workbook/port";
import { readShown } from "./read-plan";
import { replaceSheet } from "./replace-sheet";
import { soundTab, tabInUse } from "./tab-in-use";

/** A job of the plan, its tab where it has one, and how far it is. */
export interface JobStanding {
  readonly job: PlanRow<"jobs">;
  readonly tab: TabReading | null;
  readonly progress: JobProgress;
}

/** Tells of every job of a plan how far it is, in table order. */
export function jobStandings(source: CommissioningPlan): JobStanding[] {
  return [...standingsOneByOne(source)];
}

/** Tells the same one job at a time: whoever asks may do something else in between. */
export function* standingsOneByOne(source: CommissioningPlan): Generator<JobStanding, void, undefined> {
  for (const job of jobsOf(source)) {
    const tab = tabInUse(source, job);
    const progress = progressOf(job, tab === null ? null : judgedNow(source, job, tab));
    yield { job, tab, progress: { ...progress, fault: faultOf(source, job) } };
  }
}

/** Says why the figures of a job cannot be trusted; "" where they can. */
function faultOf(source: CommissioningPlan, job: PlanRow<"jobs">): string {
  try {
    soundTab(source, job);
    return "";
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return thrown.sentence;
  }
}

/** Judges an open tab by the plan as it is now; a closed one, and one whose steps cannot be worked out, by what it says itself. */
function judgedNow(source: CommissioningPlan, job: PlanRow<"jobs">, tab: TabReading): TabReading {
  if (isClosed(tab)) return tab;
  try {
    return judgedByPlan(tab, expandJob(source.model, job));
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return tab;
  }
}

/** Writes the sheet that lists how far every job is, in place of an earlier one, and answers with its name. */
export async function writeProgress(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  const jobs = jobStandings(readCommissioningPlan(workbook)).map(({ progress }) => progress);
  return replaceSheet(port, workbook, progressMark, planProgress("Progress", jobs, madeAt));
}

/** Writes the programme board: every job by day and crew, in place of an earlier one, and answers with its name. `today` is an ISO date. */
export async function writeProgramme(port: WorkbookPort, madeAt: string, today: string): Promise<string> {
  const workbook = await readShown(port);
  const source = readCommissioningPlan(workbook);
  const lines = programmeOf(source.model, jobStandings(source).map((standing) => plannedWork(source, standing)), today);
  return replaceSheet(port, workbook, programmeMark, planProgramme(lines, madeAt));
}

/** Adds to a job what its steps plan: those of its tab, or of the tab that would be built; or else why none can be. */
function plannedWork(source: CommissioningPlan, { job, tab, progress }: JobStanding): PlannedWork {
  if (tab !== null) return { job, progress, minutes: rowsOfSteps(tab.steps).reduce((sum, { minutes }) => sum + minutes, 0), fault: progress.fault };
  try {
    refuseJob(source, job, tabFamily(source.tabs, idOfJob(job), job.job));
    const steps = expandJob(source.model, job).sections.flatMap((section) => section.steps);
    return { job, progress, minutes: steps.reduce((sum, { minutes }) => sum + minutes, 0), fault: progress.fault };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return { job, progress, minutes: null, fault: thrown.sentence };
  }
}
