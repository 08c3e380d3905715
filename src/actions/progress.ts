import { jobsOf, readCommissioningPlan } from "../planning/commissioning/build";
import { idOfJob } from "../planning/commissioning/job";
import { planProgress, progressMark, progressOf, type JobProgress } from "../planning/commissioning/reports";
import { tabFamily } from "../planning/commissioning/tab";
import type { WorkbookPort } from "../workbook/port";
import { replaceSheet } from "./replace-sheet";

/** Counts how far every job is. */
export async function readProgress(port: WorkbookPort): Promise<JobProgress[]> {
  const source = readCommissioningPlan(await port.read());
  return jobsOf(source).map((job) => progressOf(job, tabFamily(source.tabs, idOfJob(job), job.job).current));
}

/** Writes the sheet that lists how far every job is, in place of an earlier one, and answers with its name. */
export async function writeProgress(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await port.read();
  const source = readCommissioningPlan(workbook);
  const jobs = jobsOf(source).map((job) => progressOf(job, tabFamily(source.tabs, idOfJob(job), job.job).current));
  return replaceSheet(port, workbook, progressMark, planProgress("Progress", jobs, madeAt));
}
