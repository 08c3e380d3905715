import type { SheetPlan } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import { expandJob, idOfJob } from "../job";
import { carryRecords, rowsOfSteps, uncarried, type CarryCounts } from "../record";
import { readPlannedTab, refuseFaulty, tabFamily, tabSheet, type TabFamily, type TabReading } from "../tab";
import { remarksOnAbsent, remarksOnIds, remarksOnLimits, remarksOnTabs } from "./build-remarks";
import type { CommissioningPlan } from "./commissioning-plan";
import { refuseClosed, refuseJob } from "./refuse-build";

/** A new tab of a job, ready to be written, and the tabs that it takes the place of. */
export interface JobBuild {
  readonly name: string;
  readonly family: TabFamily;
  readonly tab: SheetPlan;
  readonly counts: CarryCounts;
  /** Each with one subject. */
  readonly steps: number;
  /** The steps as the tab numbers and counts them: what is done on several arrays or hosts side by side is one. */
  readonly rows: number;
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
 * Refuses a closed job, an id that two jobs, arrays or tabs have, a tab that cannot be read as it was built, a name that no sheet can have or
 * that another sheet has, drives that would be emptied unasked, and whatever keeps a step from being worked out.
 */
export function buildJob(
  source: CommissioningPlan,
  job: PlanRow<"jobs">,
  workingName: (family: TabFamily) => string,
  moment: BuildMoment,
  adjust: AdjustReading = (tab) => tab,
): JobBuild {
  const family = tabFamily(source.tabs, idOfJob(job), job.job);
  refuseJob(source, job, family);
  const current = family.current === null ? null : adjust(family.current);
  refuseClosed(job, current);
  // Where none is in use, a broken one with records may be: the cell that says whether it is whole went with its column.
  const inQuestion = family.current === null ? family.others.filter(hasRecords) : [family.current];
  inQuestion.forEach(refuseFaulty);

  const expanded = expandJob(source.model, job);
  const { records, counts } = carryRecords(expanded, current, family.others.filter(({ faults }) => faults.length === 0));
  const stamp = { build: family.nextBuild, born: current?.born ?? moment.instant, madeAt: moment.madeAt, planName: moment.planName };
  const tab = tabSheet(workingName(family), { expanded, model: source.model, stamp, records });
  return {
    name: job.job,
    family,
    tab,
    counts,
    steps: expanded.sections.reduce((sum, { steps }) => sum + steps.length, 0),
    rows: rowsOfSteps(readPlannedTab(tab).steps).length,
    remarks: [...(current?.remarks ?? []), ...remarksOnTabs(family, job.job), ...remarksOnIds(expanded.places.arrays), ...remarksOnAbsent(expanded), ...remarksOnLimits(expanded)],
  };
}

function hasRecords(tab: TabReading): boolean {
  const { records, snags } = uncarried(tab, null);
  return records.length + snags.length > 0;
}
