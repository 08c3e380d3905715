import { invalid } from "../planning/text";
import { appendRows } from "../planning/plan/changes";
import { readPlan, type Plan, type ReadTable } from "../planning/plan/read";
import { tableKeys, type TableKey, type TableRows } from "../planning/plan/schema";
import { missingTables, planSetUp, sampleRows } from "../planning/plan/set-up";
import type { Edit, WorkbookPort } from "../workbook/port";
import { readPlanSheets } from "./read-plan";
import { initialRows } from "./set-up";
import { editsOf } from "./write-changes";

/** Tables that set-up itself fills: rows in them are no plan of the user's. */
const filledBySetUp: readonly TableKey[] = ["settings", "procedures", "steps"];

/**
 * Fills a workbook with the sample plan: tables that are missing are added, blank ones are filled.
 *
 * Refuses where the workbook holds a plan already, so that invented rows never stand among real ones.
 */
export async function loadSample(port: WorkbookPort): Promise<void> {
  const workbook = await readPlanSheets(port);
  const plan = readPlan(workbook);
  refuseAPlan(plan);
  const rows: TableRows = { ...initialRows(), ...sampleRows() };
  const missing = new Set(missingTables(workbook));
  const edits: Edit[] = planSetUp(workbook, rows).map((sheet) => ({ kind: "add-sheet", plan: sheet }));
  for (const key of tableKeys) {
    const table: ReadTable | null = plan[key];
    if (missing.has(key) || table === null || table.rows.length > 0) continue;
    edits.push(...editsOf(appendRows(workbook, table, key, rows[key] ?? [])));
  }
  await port.apply(edits);
}

function refuseAPlan(plan: Plan): void {
  const filled = tableKeys.find((key) => !filledBySetUp.includes(key) && (plan[key]?.rows.length ?? 0) > 0);
  if (filled === undefined) return;
  const { name, rows } = plan[filled]!;
  throw invalid(name, rows.length, `Table ${name} holds ${rows.length} rows already. Load the sample into a new workbook, so that the two do not mix.`);
}
