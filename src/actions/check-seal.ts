import type { SealCheck } from "../planning/commissioning/seal";
import { checkTabSeal } from "../planning/commissioning/tab";
import { noAnswer, quote } from "../planning/text";
import type { WorkbookPort } from "../workbook/port";
import { readJobInUse } from "./tab-in-use";

/** Holds the tab of a job against its last seal and names the cells that changed; refuses one that was never sealed. */
export async function checkSeal(port: WorkbookPort, name: string): Promise<SealCheck> {
  const { sheet, tab, job } = await readJobInUse(port, name);
  const check = checkTabSeal(sheet, tab);
  if (check === null) throw noAnswer("Jobs", name, `Job ${quote(job.job)} was never sealed. Close it out first.`);
  return check;
}
