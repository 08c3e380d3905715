import { expandJob } from "../planning/commissioning/job";
import { isClosed, openItems, outdatedItems, type OpenItem } from "../planning/commissioning/record";
import { checkSeal, sealOf } from "../planning/commissioning/seal";
import { forgedCells, sealBlocks } from "../planning/commissioning/tab";
import { invalid, noAnswer, quote } from "../planning/text";
import { writeCell } from "../planning/plan/changes";
import type { PlanRow } from "../planning/plan/read";
import type { Edit, WorkbookPort } from "../workbook/port";
import { readJobInUse, type JobInUse } from "./tab-in-use";
import { editsOf } from "./write-changes";

/** Lists what stands in the way of closing the tab of a job; none where it can be closed. */
export async function previewCloseOut(port: WorkbookPort, name: string): Promise<readonly OpenItem[]> {
  return itemsOf(await readJobInUse(port, name));
}

/** Lists what is open by what was typed, where the tab is not the plan's as it is now, and which cells of ours say something else than they must. */
function itemsOf({ source, job, tab, sheet }: JobInUse): OpenItem[] {
  return [...openItems(tab), ...outdatedItems(tab, expandJob(source.model, job)), ...forgedCells(sheet, tab)];
}

/**
 * Closes and seals the tab of a job, and answers with the code for the signed page.
 *
 * Digests are written first, then the line with the code, then the state of the job: a beginning of these leaves the tab open. The seal
 * is read back; where somebody typed meanwhile the sentence names the row.
 */
export async function closeOut(port: WorkbookPort, name: string, by: string, date: string): Promise<string> {
  if (by.trim() === "") throw invalid("by", by, "Closing out wants the name of who closes. Type it.");
  const found = await readJobInUse(port, name);
  const { tab, job } = found;
  if (isClosed(tab)) throw invalid("Jobs", name, `Job ${quote(job.job)} is closed already, with code ${sealOf(tab).code}. Check the seal, or reopen it.`);
  const items = itemsOf(found);
  if (items.length > 0) throw noAnswer("Jobs", name, `${items.length} items keep ${quote(job.job)} from closing. The first: ${items[0]!.sentence}`.slice(0, 160));
  await port.apply([...sealBlocks(tab, { by: by.trim(), date }).map((block): Edit => ({ kind: "write", sheet: tab.sheet, ...block })), ...stateEdits(found, "closed")]);
  const check = checkSeal((await readJobInUse(port, name)).tab);
  if (!check.holds) throw noAnswer("Jobs", name, `Somebody typed while ${quote(job.job)} was sealed: ${check.changed[0]!.label}. Reopen it, look, and close it out again.`.slice(0, 160));
  return check.code;
}

/** Changes the state of a job in its table, where the table has that column. */
export function stateEdits({ workbook, source, job }: JobInUse, state: Exclude<PlanRow<"jobs">["state"], "">): Edit[] {
  const table = source.model.table("jobs");
  const write = table === null ? null : writeCell(workbook, table, job.row, "state", state);
  return write === null ? [] : editsOf({ writes: [write], growths: [] });
}
