import type { SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { PlanModel } from "../../plan/model";
import { requireTables, type PlanRow } from "../../plan/read";
import { foldName, invalid, quote } from "../../text";
import { isTab, jobIdOf, readTabs, type TabReading } from "../tab";

/** A planning workbook as commissioning reads it: the plan, and the tabs that are there. */
export interface CommissioningPlan {
  readonly model: PlanModel;
  readonly tabs: readonly TabReading[];
  /** The sheets that the tabs were read from, as they were. */
  readonly tabSheets: readonly SheetSnapshot[];
  /** Names of all sheets. */
  readonly sheets: readonly string[];
}

/** Reads what commissioning needs of a workbook; refuses one without the tables it cannot do without. */
export function readCommissioningPlan(workbook: WorkbookSnapshot): CommissioningPlan {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["jobs", "procedures", "steps", "sites", "arrays"]);
  return withTabs({ model, sheets: workbook.sheets.map(({ name }) => name) }, workbook);
}

/** Gives a plan the tabs that were read; those that it had go. */
export function withTabs(plan: Pick<CommissioningPlan, "model" | "sheets">, { sheets }: WorkbookSnapshot): CommissioningPlan {
  return { ...plan, tabs: readTabs({ sheets }), tabSheets: sheets.filter(isTab) };
}

/** A plan whose tabs are still to be read, job by job: those of a hundred jobs at once are a hundred times what a build needs. */
export interface PlanOfTabs {
  readonly plan: CommissioningPlan;
  /** Names of the sheets that are tabs of a job by its id, or by one that differs in capitals, which is refused by name. */
  readonly tabsOf: (jobId: string) => readonly string[];
}

/** Reads of a workbook what commissioning needs of it but for what stands on its tabs, whose heads are enough. */
export function readPlanOfTabs({ sheets }: WorkbookSnapshot): PlanOfTabs {
  const tabsOf = new Map<string, string[]>();
  const apart = sheets.map((sheet) => {
    const key = jobKeyOf(sheet);
    if (key === null) return sheet;
    tabsOf.set(key, [...(tabsOf.get(key) ?? []), sheet.name]);
    return { ...sheet, values: [], formulas: [] };
  });
  return { plan: readCommissioningPlan({ sheets: apart }), tabsOf: (jobId) => tabsOf.get(foldName(jobId)) ?? [] };
}

/** Tells whether a sheet is a tab of a job by its id, or by one that differs in capitals, which is refused by name. */
export function isTabOf(sheet: SheetSnapshot, jobId: string): boolean {
  return jobKeyOf(sheet) === foldName(jobId);
}

function jobKeyOf(sheet: SheetSnapshot): string | null {
  const jobId = jobIdOf(sheet);
  return jobId === null ? null : foldName(jobId);
}

/** Lists the jobs of a plan that have a name, in table order. */
export function jobsOf({ model }: Pick<CommissioningPlan, "model">): readonly PlanRow<"jobs">[] {
  return model.rows("jobs").filter(({ job }) => job !== "");
}

/** Finds the job of a name, without case; refuses a name that is no job. */
export function jobNamed(source: Pick<CommissioningPlan, "model">, name: string): PlanRow<"jobs"> {
  const found = jobsOf(source).find(({ job }) => foldName(job) === foldName(name));
  if (found === undefined) throw invalid("Jobs", name, `No job is named ${quote(name)}. Write the name as it stands in the table Jobs.`);
  return found;
}
