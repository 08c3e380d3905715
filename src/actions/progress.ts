import { jobsOf, readCommissioningPlan, type CommissioningPlan } from "../planning/commissioning/build";
import { expandJob } from "../planning/commissioning/job";
import { isClosed, judgedByPlan } from "../planning/commissioning/record";
import type { TabReading } from "../planning/commissioning/tab";
import { planProgress, progressMark, progressOf, type JobProgress } from "../planning/commissioning/reports";
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
  return jobsOf(source).map((job) => {
    const tab = tabInUse(source, job);
    const progress = progressOf(job, tab === null ? null : judgedNow(source, job, tab));
    return { job, tab, progress: { ...progress, fault: faultOf(source, job) } };
  });
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
