import { mendsOf, missingId } from "../planning/checks";
import { PlanModel } from "../planning/plan/model";
import type { WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { readPlanSheets } from "./read-plan";
import { editsOf } from "./write-changes";

/**
 * Gives every array and every job without an id the next one, and answers the workbook as it is then, but for what stands on its tabs.
 *
 * Done before anything is built: records are found again by these ids, so none may come only after a tab is filled.
 */
export async function giveIds(port: WorkbookPort): Promise<WorkbookSnapshot> {
  const workbook = await readPlanSheets(port);
  const { writes, growths } = mendsOf(missingId.check(new PlanModel(workbook)));
  if (writes.length === 0) return workbook;
  await port.apply(editsOf({ writes, growths }));
  return readPlanSheets(port);
}
