import { handoverMark, handoverPack, planHandover, type HandoverPack } from "../planning/commissioning/reports";
import { checkTabSeal, sheetNameWith } from "../planning/commissioning/tab";
import type { SheetPlan } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { replaceSheet } from "./replace-sheet";
import { readJobInUse, type JobInUse } from "./tab-in-use";

/** What is handed over of a job, and the sheet that shows it; nothing is written. */
export interface Handover {
  readonly pack: HandoverPack;
  readonly sheet: SheetPlan;
}

/** Makes the handover sheet of a job, in place of an earlier one, and answers with its name. */
export async function handover(port: WorkbookPort, name: string, madeAt: string): Promise<string> {
  const found = await readJobInUse(port, name);
  return replaceSheet(port, found.workbook, handoverMark, handoverOf(found, madeAt).sheet);
}

/** Gathers what is handed over of a job, to be shown elsewhere than in its workbook. */
export async function readHandover(port: WorkbookPort, name: string, madeAt: string): Promise<Handover> {
  return handoverOf(await readJobInUse(port, name), madeAt);
}

function handoverOf({ source, job, tab, sheet }: JobInUse, madeAt: string): Handover {
  const sealHolds = checkTabSeal(sheet, tab)?.holds === true;
  const pack = handoverPack(source, job, { tab, sealHolds }, madeAt);
  return { pack, sheet: planHandover(sheetNameWith(job.job, "handover", []), pack) };
}
