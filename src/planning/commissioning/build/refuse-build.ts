import { sameSheetName, sheetNameFault } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import { tableKeys } from "../../plan/schema";
import { invalid, quote } from "../../text";
import { isClosed } from "../record";
import type { TabFamily, TabReading } from "../tab";
import type { CommissioningPlan } from "./commissioning-plan";

/** Refuses to build the tab of a job that is closed: its seal would be lost. */
export function refuseClosed(job: PlanRow<"jobs">, current: TabReading | null): void {
  if (current === null || !isClosed(current)) return;
  throw invalid("State", job.state, `Job ${quote(job.job)} is closed and sealed, so its tab is not built again. Reopen it first, with name and reason.`);
}

/** Refuses a job whose name no sheet can have, or that a sheet has which is no tab of this job in use. */
export function refuseName({ model, sheets }: CommissioningPlan, { job }: PlanRow<"jobs">, { current, others }: TabFamily): void {
  const refuse = (sentence: string): never => {
    throw invalid("Job", job, sentence);
  };
  const fault = sheetNameFault(job);
  if (fault !== null) refuse(`Job ${quote(job)} ${fault}, so no tab can have that name. Give it another one.`);
  if (model.rowsWith("jobs", "job", job).length > 1) refuse(`Job ${quote(job)} stands twice in the table Jobs. Give each job a name of its own.`);
  if (tableKeys.some((key) => sameSheetName(model.table(key)?.sheet ?? "", job))) {
    refuse(`Job ${quote(job)} has the name of a planning sheet. Give it another one.`);
  }
  const taken = sheets.find((name) => sameSheetName(name, job));
  if (taken !== undefined && ![current, ...others].some((tab) => tab?.sheet === taken)) {
    refuse(`A sheet named ${quote(taken)} is there already and is no tab in use of this job. Rename that sheet, then build.`);
  }
}
