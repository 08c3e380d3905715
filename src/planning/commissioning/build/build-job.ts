import { sameSheetName, sheetNameFault, type SheetPlan, type WorkbookSnapshot } from "../../../sheet";
import { FeedLoads } from "../../plan/model";
import { PlanLookup } from "../../plan/model";
import { readPlan, requireTables, rowsOf, type Plan, type PlanRow } from "../../plan/read";
import { tableKeys } from "../../plan/schema";
import { foldName, invalid, quote } from "../../text";
import { expandJob, idOfJob } from "../job";
import { carryRecords, isClosed, type CarryCounts } from "../record";
import { planTab, readTabs, tabFamily, type TabFamily, type TabReading } from "../tab";
import { remarksOnIds, remarksOnTabs } from "./build-remarks";

/** A planning workbook as commissioning reads it: the plan, and the tabs that are there. */
export interface CommissioningPlan {
  readonly plan: Plan;
  readonly lookup: PlanLookup;
  readonly loads: FeedLoads;
  readonly tabs: readonly TabReading[];
  readonly sheets: readonly string[];
}

/** Reads what commissioning needs of a workbook; refuses one without the tables it cannot do without. */
export function readCommissioningPlan(workbook: WorkbookSnapshot): CommissioningPlan {
  const plan = readPlan(workbook);
  requireTables(plan, ["jobs", "procedures", "steps", "sites", "arrays"]);
  return { plan, lookup: new PlanLookup(plan), loads: new FeedLoads(plan), tabs: readTabs(workbook), sheets: workbook.sheets.map(({ name }) => name) };
}

/** Lists the jobs of a plan that have a name, in table order. */
export function jobsOf({ plan }: Pick<CommissioningPlan, "plan">): readonly PlanRow<"jobs">[] {
  return rowsOf(plan, "jobs").filter(({ job }) => job !== "");
}

/** Finds the job of a name, without case; refuses a name that is no job. */
export function jobNamed(source: Pick<CommissioningPlan, "plan">, name: string): PlanRow<"jobs"> {
  const found = jobsOf(source).find(({ job }) => foldName(job) === foldName(name));
  if (found === undefined) throw invalid("Jobs", name, `No job is named ${quote(name)}. Write the name as it stands in the table Jobs.`);
  return found;
}

/** A new tab of a job, ready to be written, and the tabs that it takes the place of. */
export interface JobBuild {
  readonly name: string;
  readonly family: TabFamily;
  readonly tab: SheetPlan;
  readonly counts: CarryCounts;
  readonly steps: number;
  readonly remarks: readonly string[];
}

/** What the caller knows of the moment: planning has no clock. */
export interface BuildMoment {
  /** As people read it, such as 2026-05-31 14:20. */
  readonly madeAt: string;
  /** Instant in ISO form, to the millisecond; the first build of a job is known by it. */
  readonly instant: string;
  readonly planName: string;
}

/** Changes what was read of the tab in use before it is carried over: what a returned file brings is put in here. */
export type AdjustReading = (tab: TabReading) => TabReading;

/**
 * Plans the next tab of a job under a working name, with all that people typed into its earlier tabs.
 *
 * Refuses a closed job, a name that no sheet can have or that another sheet has, and whatever keeps a step from being worked out.
 */
export function buildJob(
  source: CommissioningPlan,
  job: PlanRow<"jobs">,
  workingName: (family: TabFamily) => string,
  moment: BuildMoment,
  adjust: AdjustReading = (tab) => tab,
): JobBuild {
  const family = tabFamily(source.tabs, idOfJob(job), job.job);
  refuseName(source, job, family);
  const current = family.current === null ? null : adjust(family.current);
  refuseClosed(job, current);

  const expanded = expandJob(source.lookup, source.loads, job);
  const { records, counts } = carryRecords(expanded, current, family.others);
  const stamp = { build: family.nextBuild, born: current?.born ?? moment.instant, madeAt: moment.madeAt, planName: moment.planName };
  const tab = planTab(workingName(family), { expanded, lookup: source.lookup, loads: source.loads, stamp, records });
  return {
    name: job.job,
    family,
    tab,
    counts,
    steps: expanded.sections.reduce((sum, { steps }) => sum + steps.length, 0),
    remarks: [...(current?.remarks ?? []), ...remarksOnTabs(family, job.job), ...remarksOnIds(expanded.places.arrays)],
  };
}

function refuseClosed(job: PlanRow<"jobs">, current: TabReading | null): void {
  if (current === null || !isClosed(current)) return;
  throw invalid("State", job.state, `Job ${quote(job.job)} is closed and sealed, so its tab is not built again. Reopen it first, with name and reason.`);
}

function refuseName({ lookup, plan, sheets }: CommissioningPlan, job: PlanRow<"jobs">, { current, others }: TabFamily): void {
  const fault = sheetNameFault(job.job);
  if (fault !== null) throw invalid("Job", job.job, `Job ${quote(job.job)} ${fault}, so no tab can have that name. Give it another one.`);
  if (lookup.rowsWhere("jobs", "job", job.job).length > 1) throw invalid("Job", job.job, `Job ${quote(job.job)} stands twice in the table Jobs. Give each job a name of its own.`);
  const planning = tableKeys.find((key) => sameSheetName(plan[key]?.sheet ?? "", job.job));
  if (planning !== undefined) throw invalid("Job", job.job, `Job ${quote(job.job)} has the name of a planning sheet. Give it another one.`);
  const taken = sheets.find((name) => sameSheetName(name, job.job));
  if (taken !== undefined && ![current, ...others].some((tab) => tab?.sheet === taken)) {
    throw invalid("Job", job.job, `A sheet named ${quote(taken)} is there already and is no tab in use of this job. Rename that sheet, then build.`);
  }
}
