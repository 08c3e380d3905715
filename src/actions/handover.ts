import { handoverMark, planHandover } from "../planning/commissioning/reports";
import { checkTabSeal, sheetNameWith } from "../planning/commissioning/tab";
import type { WorkbookPort } from "../workbook/port";
import { replaceSheet } from "./replace-sheet";
import { readJobInUse } from "./tab-in-use";

/** Makes the handover sheet of a job, in place of an earlier one, and answers with its name. */
export async function handover(port: WorkbookPort, name: string, madeAt: string): Promise<string> {
  const { workbook, source, job, tab, sheet } = await readJobInUse(port, name);
  const sealHolds = checkTabSeal(sheet, tab)?.holds === true;
  return replaceSheet(port, workbook, handoverMark, planHandover(sheetNameWith(job.job, "handover", []), source, job, { tab, sealHolds }, madeAt));
}
