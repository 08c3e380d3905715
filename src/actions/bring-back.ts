import { isTabOf, jobsOf, readPlanOfTabs, withTabs, type BuildMoment, type CommissioningPlan } from "../planning/commissioning/build";
import { expandJob, idOfJob } from "../planning/commissioning/job";
import { acceptReturned, compareReturned, heldByPlan, isClosed, notStanding, type ReturnedTab } from "../planning/commissioning/record";
import { readTabs, refuseFaulty, tabsInUse, type TabReading } from "../planning/commissioning/tab";
import { invalid, Problem, quote } from "../planning/text";
import type { PlanRow } from "../planning/plan/read";
import type { WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { formulasLooking } from "./looking-formulas";
import { putTab, type JobOutcome } from "./put-tab";
import { readPlanSheets, withTabsNamed } from "./read-plan";
import { soundTab, tabInUse } from "./tab-in-use";

/** One tab of a returned file with what it brings to a job of the plan. */
export interface ReturnedJob extends ReturnedTab {
  readonly job: string;
  /** The returned tab itself, to be handed to `bringBack`. */
  readonly theirs: TabReading;
}

/**
 * Compares every tab in use of a returned file with the plan's own, for a person to look at; nothing is written.
 *
 * Refuses a file without a tab, a tab whose job the plan does not have or has closed, and a tab of another plan.
 */
export async function previewReturned(port: WorkbookPort, returned: WorkbookSnapshot): Promise<ReturnedJob[]> {
  const tabs = tabsInUse(readTabs(returned));
  const source = await planWithTabs(port, tabs.map(({ tab }) => tab.jobId));
  for (const { tab, copies: [copy] } of tabs) {
    if (copy !== undefined) throw invalid("file", copy.sheet, `Tabs ${quote(tab.sheet)} and ${quote(copy.sheet)} of the file are of one job. Bring back one at a time, each in its own file.`);
  }
  if (tabs.length === 0) throw invalid("file", null, "The file holds no commissioning tab. Choose the workbook or the copied tab that was handed out.");
  return tabs.map(({ tab: theirs }) => {
    const job = jobsOf(source).find((one) => idOfJob(one) === theirs.jobId);
    if (job === undefined) throw invalid("file", theirs.title, `The returned tab ${quote(theirs.title)} is of a job that this plan does not have. Choose its own plan.`);
    refuseFaulty(theirs);
    return { job: job.job, theirs, ...compareReturned(oursOf(source, job), theirs) };
  });
}

/** Reads the plan with the tabs of the jobs of these ids. */
async function planWithTabs(port: WorkbookPort, jobIds: readonly string[]): Promise<CommissioningPlan> {
  const workbook = await readPlanSheets(port, { jobIds });
  return withTabs(readPlanOfTabs(workbook).plan, { sheets: workbook.sheets.filter((sheet) => jobIds.some((id) => isTabOf(sheet, id))) });
}

/** Finds the plan's own tab of a job; refuses a job that has none, or whose tab is closed. */
function oursOf(source: CommissioningPlan, job: PlanRow<"jobs">): TabReading {
  const tab = soundTab(source, job);
  if (tab === null) throw invalid("file", job.job, `Job ${quote(job.job)} has no tab in this plan, so nothing can be brought back to it. Build it first.`);
  if (isClosed(tab)) throw invalid("file", job.job, `Job ${quote(job.job)} is closed and sealed, so nothing is brought back to it. Reopen it first.`);
  return heldNow(source, job, tab);
}

/** Takes hold points from the tab and from the plan as it is now; from the tab alone where the plan cannot be worked out, and so not be built. */
function heldNow(source: CommissioningPlan, job: PlanRow<"jobs">, tab: TabReading): TabReading {
  try {
    return heldByPlan(tab, expandJob(source.model, job));
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return tab;
  }
}

/**
 * Writes the accepted items of a returned tab by building the job's tab again with them in it.
 *
 * So it is whole or not at all, as every build is; a record of ours that was replaced stands in the kept block. The tab is read back afterwards,
 * and the sentence says how many of the accepted items stand in it.
 */
export async function bringBack(port: WorkbookPort, returned: ReturnedJob, accepted: ReadonlySet<string>, moment: BuildMoment): Promise<JobOutcome> {
  const workbook = await readPlanSheets(port);
  const { plan, tabsOf } = readPlanOfTabs(workbook);
  const job = jobsOf(plan).find(({ job: name }) => name === returned.job);
  if (job === undefined) throw invalid("Jobs", returned.job, `Job ${quote(returned.job)} is no longer in the plan. Choose the file again.`);
  const source = await withTabsNamed(port, plan, tabsOf(idOfJob(job)));
  compareReturned(oursOf(source, job), returned.theirs);
  const { outcome } = await putTab(port, source, job, moment, {
    adjust: (tab) => acceptReturned(heldNow(source, job, tab), returned.theirs, accepted),
    lookingAt: formulasLooking(workbook),
  });
  if (!outcome.built) return outcome;
  const tab = tabInUse(await planWithTabs(port, [idOfJob(job)]), job);
  const missing = tab === null ? [...accepted] : notStanding(tab, returned.theirs, accepted);
  const standing = `${accepted.size - missing.length} of ${accepted.size} accepted ${accepted.size === 1 ? "entry stands" : "entries stand"} in the tab.`;
  return { ...outcome, sentence: `${outcome.sentence} ${standing}${missing.length === 0 ? "" : ` Bring the file back again for ${quote(missing[0]!)}.`}` };
}
