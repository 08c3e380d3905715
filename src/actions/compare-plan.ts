import { readCommissioningPlan } from "../planning/commissioning/build";
import { expandJob, idOfJob, touchedSteps } from "../planning/commissioning/job";
import { isClosed } from "../planning/commissioning/record";
import { tabsInUse } from "../planning/commissioning/tab";
import { comparePlans, type PlanDifferences } from "../planning/plan/compare";
import { PlanModel } from "../planning/plan/model";
import { tableKeys } from "../planning/plan/schema";
import { checkPlan, rules } from "../planning/checks";
import { invalid, Problem } from "../planning/text";
import { showCell, type WorkbookSnapshot } from "../sheet";

/** What the differences do to a tab that stands in the newer workbook and is not closed. */
export interface TouchedTab {
  readonly job: string;
  readonly sheet: string;
  /** Steps that would be built otherwise; null where one of the plans does not make the job, as `because` says. */
  readonly steps: number | null;
  readonly because: string;
}

/** What is different in a plan against an earlier one. */
export interface PlanComparison {
  readonly tables: readonly PlanDifferences[];
  readonly tabs: readonly TouchedTab[];
}

/**
 * Compares a workbook with an earlier one, table by table and row by row, and says which of its open tabs the differences touch.
 *
 * Refuses an earlier workbook without a planning table. A text that looks like a stored secret in either is never repeated. Nothing is written.
 */
export function comparePlan(before: WorkbookSnapshot, now: WorkbookSnapshot): PlanComparison {
  const [earlier, later] = [new PlanModel(before), new PlanModel(now)];
  if (tableKeys.every((key) => earlier.table(key) === null)) throw invalid("file", null, "That file holds no planning table. Choose the file of a plan.");
  const tabs = later.rows("jobs").length === 0 ? [] : openTabs(now).flatMap((tab): TouchedTab[] => touchedTab(tab, earlier, later));
  return { tables: withoutSecrets(comparePlans(earlier.plan, later.plan), new Set([before, now].flatMap(secretsIn))), tabs };
}

/** Lists the texts of the cells that the check for stored secrets names. */
function secretsIn(workbook: WorkbookSnapshot): string[] {
  const secrets = checkPlan(workbook, rules.filter(({ name }) => name === "stored-secret"));
  return secrets.map(({ sheet, row, column }) => showCell(workbook.sheets.find(({ name }) => name === sheet)?.values[row]?.[column]).trim());
}

function withoutSecrets(tables: readonly PlanDifferences[], secrets: ReadonlySet<string>): PlanDifferences[] {
  const told = (text: string) => (secrets.has(text) ? "(looks like a secret)" : text);
  return tables.map(({ table, rows }) => ({
    table,
    rows: rows.map((row) => ({ ...row, row: told(row.row), cells: row.cells.map((cell) => ({ ...cell, before: told(cell.before), now: told(cell.now) })) })),
  }));
}

/** Finds the tabs in use that are not closed; none where the workbook has not all that commissioning needs. */
function openTabs(workbook: WorkbookSnapshot) {
  try {
    return tabsInUse(readCommissioningPlan(workbook).tabs).flatMap(({ tab }) => (isClosed(tab) ? [] : [tab]));
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return [];
  }
}

function touchedTab({ jobId, sheet, title }: { readonly jobId: string; readonly sheet: string; readonly title: string }, before: PlanModel, now: PlanModel): TouchedTab[] {
  const jobIn = (model: PlanModel) => model.rows("jobs").find((job) => idOfJob(job) === jobId);
  const [was, is] = [jobIn(before), jobIn(now)];
  const tab = { job: is?.job ?? title, sheet };
  if (is === undefined) return [{ ...tab, steps: null, because: "This plan does not have the job any more." }];
  if (was === undefined) return [{ ...tab, steps: null, because: "The earlier plan does not have the job." }];
  try {
    const steps = touchedSteps(expandJob(before, was), expandJob(now, is));
    return steps === 0 ? [] : [{ ...tab, steps, because: "" }];
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return [{ ...tab, steps: null, because: thrown.sentence }];
  }
}
