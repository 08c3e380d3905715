import { checkSeal as checkSealOf, type SealCheck } from "../planning/commissioning/seal";
import { noAnswer, quote } from "../planning/text";
import type { WorkbookPort } from "../workbook/port";
import { readJobInUse } from "./tab-in-use";

/** Holds the tab of a job against its last seal and names the rows that changed; refuses one that was never sealed. */
export async function checkSeal(port: WorkbookPort, name: string): Promise<SealCheck> {
  const { tab, job } = await readJobInUse(port, name);
  const check = checkSealOf(tab);
  if (check.code === "") throw noAnswer("Jobs", name, `Job ${quote(job.job)} was never sealed. Close it out first.`);
  return check;
}
