import { jobsOf, readCommissioningPlan, type CommissioningPlan } from "../planning/commissioning/build";
import { planProgress, progressMark, progressOf, type JobProgress } from "../planning/commissioning/reports";
import type { TabReading } from "../planning/commissioning/tab";
import type { PlanRow } from "../planning/plan/read";
import type { WorkbookPort } from "../workbook/port";
import { replaceSheet } from "./replace-sheet";
import { tabInUse } from "./tab-in-use";

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
    return { job, tab, progress: progressOf(job, tab) };
  });
}

/** Writes the sheet that lists how far every job is, in place of an earlier one, and answers with its name. */
export async function writeProgress(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await port.read();
  const jobs = jobStandings(readCommissioningPlan(workbook)).map(({ progress }) => progress);
  return replaceSheet(port, workbook, progressMark, planProgress("Progress", jobs, madeAt));
}
