import { lackingTables } from "../planning/plan/guided";
import { PlanModel } from "../planning/plan/model";
import type { WorkbookPort } from "../workbook/port";
import { readPlanValues } from "./read-plan";
import { addTables, setUp } from "./set-up";

/** Adds the tables into which the set-up of a site writes, where the workbook lacks them. */
export async function addTablesOfSite(port: WorkbookPort): Promise<void> {
  if (lackingTables(new PlanModel(await readPlanValues(port))).length === 0) return;
  await setUp(port);
  await addTables(port, lackingTables(new PlanModel(await readPlanValues(port))));
}
