import { expandJob } from "../planning/commissioning/job";
import { isClosed, openItems, outdatedItems, passedHoldPoints, withoutAccepted, type OpenItem } from "../planning/commissioning/record";
import { acceptBlocks, forgedCells, sealBlocks, sealRowOf } from "../planning/commissioning/tab";
import { cutSentence, invalid, noAnswer, quote } from "../planning/text";
import { writeCell } from "../planning/plan/changes";
import type { PlanRow } from "../planning/plan/read";
import { showCell } from "../sheet";
import type { Edit, WorkbookPort } from "../workbook/port";
import { checkSeal } from "./check-seal";
import { readJobInUse, type JobInUse } from "./tab-in-use";
import { editsOf } from "./write-changes";

/** Lists what stands in the way of closing the tab of a job; none where it can be closed. */
export async function previewCloseOut(port: WorkbookPort, name: string): Promise<readonly OpenItem[]> {
  return itemsOf(await readJobInUse(port, name));
}

/**
 * Lists what is open by what was typed, which hold points work went past, where the tab is not the plan's as it is now, which cells of ours say
 * something else than they must, and what stands in the way of the seal itself. What a snag accepts by name is no longer open.
 */
function itemsOf({ source, job, tab, sheet }: JobInUse): OpenItem[] {
  const notAccepted = withoutAccepted([...passedHoldPoints(tab), ...outdatedItems(tab, expandJob(source.model, job)), ...forgedCells(sheet, tab)], tab);
  const sealRow = sealRowOf(tab);
  const inTheWay = tab.elsewhere.filter(({ row, carried }) => carried === "" && row === sealRow).slice(0, 1);
  return [
    ...openItems(tab),
    ...notAccepted,
    ...inTheWay.map(({ row }) => ({ row, sentence: `What was typed into row ${row + 1} stands where the seal goes. Move it, or build the tab again.` })),
  ];
}

/**
 * Accepts by name and reason what keeps the tab of a job from closing because it is not as the plan and the build have it: cells that were typed
 * over, rows that the plan has changed, work before a hold point was signed. Writes one snag that lists them, and answers with how many they are.
 */
export async function acceptAsItIs(port: WorkbookPort, name: string, by: string, reason: string): Promise<number> {
  if (by.trim() === "" || reason.trim() === "") throw invalid("reason", reason, "Accepting wants a name and a reason. Type both.");
  const found = await readJobInUse(port, name);
  const { tab, job, sheet } = found;
  if (isClosed(tab)) throw noAnswer("Jobs", name, `Job ${quote(job.job)} is closed, so there is nothing to accept. Reopen it first.`);
  const facts = itemsOf(found).flatMap(({ fact }) => fact ?? []);
  if (facts.length === 0) throw noAnswer("Jobs", name, `Nothing in ${quote(job.job)} is typed over or outdated. What is open is put right in its row.`);
  await port.apply(acceptBlocks(sheet, tab, facts, { by: by.trim(), reason: reason.trim() }).map((block): Edit => ({ kind: "write", sheet: tab.sheet, ...block })));
  return facts.length;
}

/**
 * Closes and seals the tab of a job, and answers with the code for the signed page.
 *
 * Digests are written first, then the line with the code, then the state of the job: a beginning of these leaves the tab open. The seal
 * is read back; where somebody typed meanwhile the sentence names the cell. `date` is the day, with the time behind it.
 */
export async function closeOut(port: WorkbookPort, name: string, by: string, date: string): Promise<string> {
  if (by.trim() === "") throw invalid("by", by, "Closing out wants the name of who closes. Type it.");
  const found = await readJobInUse(port, name);
  const { tab, job, sheet } = found;
  if (isClosed(tab)) throw invalid("Jobs", name, `Job ${quote(job.job)} is closed already, with code ${showCell(tab.seals.at(-1)?.typed.code)}. Check the seal, or reopen it.`);
  const items = itemsOf(found);
  if (items.length > 0) throw noAnswer("Jobs", name, cutSentence(`${items.length} items keep ${quote(job.job)} from closing. The first: ${items[0]!.sentence}`));
  await port.apply([...sealBlocks(sheet, tab, { by: by.trim(), date }).map((block): Edit => ({ kind: "write", sheet: tab.sheet, ...block })), ...stateEdits(found, "closed")]);
  const check = await checkSeal(port, name);
  if (!check.holds) throw noAnswer("Jobs", name, cutSentence(`Somebody typed while ${quote(job.job)} was sealed: ${check.changed[0]!.label}. Reopen it, look, and close it out again.`));
  return check.code;
}

/** Changes the state of a job in its table, where the table has that column. */
export function stateEdits({ workbook, source, job }: JobInUse, state: Exclude<PlanRow<"jobs">["state"], "">): Edit[] {
  const table = source.model.table("jobs");
  const write = table === null ? null : writeCell(workbook, table, job.row, "state", state);
  return write === null ? [] : editsOf({ writes: [write], growths: [] });
}
