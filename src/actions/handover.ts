import { handoverMark, planHandover } from "../planning/commissioning/reports";
import { checkTabSeal, sheetNameWith } from "../planning/commissioning/tab";
import type { SheetPlan } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { replaceSheet } from "./replace-sheet";
import { readJobInUse, type JobInUse } from "./tab-in-use";

/** Makes the handover sheet of a job, in place of an earlier one, and answers with its name. */
export async function handover(port: WorkbookPort, name: string, madeAt: string): Promise<string> {
  const found = await readJobInUse(port, name);
  return replaceSheet(port, found.workbook, handoverMark, planSheet(found, madeAt));
}

/** Plans the handover sheet of a job for another workbook; nothing is written. */
export async function handoverSheet(port: WorkbookPort, name: string, madeAt: string): Promise<SheetPlan> {
  return planSheet(await readJobInUse(port, name), madeAt);
}

function planSheet({ source, job, tab, sheet }: JobInUse, madeAt: string): SheetPlan {
  const sealHolds = checkTabSeal(sheet, tab)?.holds === true;
  return planHandover(sheetNameWith(job.job, "handover", []), source, job, { tab, sealHolds }, madeAt);
}
