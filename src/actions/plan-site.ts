import { lackingTables } from "../planning/plan/guided";
import { PlanModel } from "../planning/plan/model";
import { planTables } from "../planning/plan/set-up";
import type { Edit, WorkbookPort } from "../workbook/port";
import { readPlanValues } from "./read-plan";
import { setUp } from "./set-up";

/** Adds the tables into which the set-up of a site writes, where the workbook lacks them. */
export async function addTablesOfSite(port: WorkbookPort): Promise<void> {
  if (lackingTables(new PlanModel(await readPlanValues(port))).length === 0) return;
  await setUp(port);
  const workbook = await readPlanValues(port);
  const edits = planTables(workbook, lackingTables(new PlanModel(workbook))).map((plan): Edit => ({ kind: "add-sheet", plan }));
  if (edits.length > 0) await port.apply(edits);
}
