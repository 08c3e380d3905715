import { storedSecret } from "../planning/checks";
import { expandJob, idOfJob, touchedSteps } from "../planning/commissioning/job";
import { isClosed } from "../planning/commissioning/record";
import { readTabs, tabsInUse } from "../planning/commissioning/tab";
import { comparePlans, type PlanDifferences } from "../planning/plan/compare";
import { PlanModel } from "../planning/plan/model";
import { isPlan } from "../planning/plan/read";
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
  if (!isPlan(earlier.plan)) throw invalid("file", null, "That file holds no planning table. Choose the file of a plan.");
  const open = tabsInUse(readTabs(now)).flatMap(({ tab }) => (isClosed(tab) ? [] : [tab]));
  const tables = withoutSecrets(comparePlans(earlier.plan, later.plan), new Set([earlier, later].flatMap(secretsIn)));
  return { tables, tabs: open.flatMap((tab) => touchedTab(tab, earlier, later)) };
}

/** Lists the texts of the cells that the check for stored secrets names. */
function secretsIn(model: PlanModel): string[] {
  return storedSecret.check(model).map(({ sheet, row, column }) => showCell(model.sheet(sheet)?.values[row]?.[column]).trim());
}

function withoutSecrets(tables: readonly PlanDifferences[], secrets: ReadonlySet<string>): PlanDifferences[] {
  const told = (text: string) => (secrets.has(text) ? "(looks like a secret)" : text);
  return tables.map(({ table, rows }) => ({
    table,
    rows: rows.map((row) => ({ ...row, row: told(row.row), cells: row.cells.map((cell) => ({ ...cell, before: told(cell.before), now: told(cell.now) })) })),
  }));
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
