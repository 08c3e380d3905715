import { jobNamed, readPlanOfTabs, refuseIds, refuseUnsealed, type CommissioningPlan } from "../planning/commissioning/build";
import { idOfJob } from "../planning/commissioning/job";
import { refuseFaulty, tabFamily, type TabReading } from "../planning/commissioning/tab";
import { noAnswer, quote } from "../planning/text";
import type { PlanRow } from "../planning/plan/read";
import type { SheetSnapshot, WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { readPlanValues, withTabsNamed } from "./read-plan";

/** A job with the tab that is in use for it, as read just now. */
export interface JobInUse {
  /** The planning tables; of tabs no more than their heads. */
  readonly workbook: WorkbookSnapshot;
  /** The plan, with the tabs of the job and no other. */
  readonly source: CommissioningPlan;
  readonly job: PlanRow<"jobs">;
  readonly tab: TabReading;
  /** The sheet of the tab. */
  readonly sheet: SheetSnapshot;
}

/** Finds the tab that is in use for a job; null where it has none yet. */
export function tabInUse({ tabs }: Pick<CommissioningPlan, "tabs">, job: PlanRow<"jobs">): TabReading | null {
  return tabFamily(tabs, idOfJob(job), job.job).current;
}

/**
 * Finds the tab that is in use for a job and can be believed; null where it has none yet.
 *
 * Refuses by name an id or a job that two have, a tab that cannot be read as it was built, and one that the plan says is closed without a seal.
 */
export function soundTab(source: Pick<CommissioningPlan, "model" | "tabs">, job: PlanRow<"jobs">): TabReading | null {
  const family = tabFamily(source.tabs, idOfJob(job), job.job);
  refuseIds(source, job, family);
  if (family.current !== null) refuseFaulty(family.current);
  refuseUnsealed(job, family.current);
  return family.current;
}

/** Reads the plan and finds the tab in use of a job, as `soundTab` does; refuses a job that has none yet. */
export async function readJobInUse(port: WorkbookPort, name: string): Promise<JobInUse> {
  const workbook = await readPlanValues(port);
  const { plan, tabsOf } = readPlanOfTabs(workbook);
  const job = jobNamed(plan, name);
  const source = await withTabsNamed(port, plan, tabsOf(idOfJob(job)));
  const tab = soundTab(source, job);
  if (tab === null) throw noAnswer("Jobs", name, `Job ${quote(job.job)} has no tab yet. Build it first.`);
  return { workbook, source, job, tab, sheet: source.tabSheets.find((one) => one.name === tab.sheet)! };
}
