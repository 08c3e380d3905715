import { planPreview, previewMark } from "../planning/commissioning/reports";
import { PlanModel } from "../planning/plan/model";
import type { WorkbookPort } from "../workbook/port";
import { readShown } from "./read-plan";
import { replaceSheet } from "./replace-sheet";

/** Writes the sheet that shows what a procedure makes of the plan, in place of an earlier one, and answers with its name. */
export async function previewProcedure(port: WorkbookPort, procedure: string, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  return replaceSheet(port, workbook, previewMark, planPreview(new PlanModel(workbook), procedure, madeAt));
}
