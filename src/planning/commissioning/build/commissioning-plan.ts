import type { WorkbookSnapshot } from "../../../sheet";
import { PlanModel } from "../../plan/model";
import { requireTables, type PlanRow } from "../../plan/read";
import { foldName, invalid, quote } from "../../text";
import { readTabs, type TabReading } from "../tab";

/** A planning workbook as commissioning reads it: the plan, and the tabs that are there. */
export interface CommissioningPlan {
  readonly model: PlanModel;
  readonly tabs: readonly TabReading[];
  readonly sheets: readonly string[];
}

/** Reads what commissioning needs of a workbook; refuses one without the tables it cannot do without. */
export function readCommissioningPlan(workbook: WorkbookSnapshot): CommissioningPlan {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["jobs", "procedures", "steps", "sites", "arrays"]);
  return { model, tabs: readTabs(workbook), sheets: workbook.sheets.map(({ name }) => name) };
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
