import { isClosed } from "../planning/commissioning/record";
import { reopenBlocks } from "../planning/commissioning/tab";
import { invalid, noAnswer, quote } from "../planning/text";
import type { Edit, WorkbookPort } from "../workbook/port";
import { stateEdits } from "./close-out";
import { readJobInUse } from "./tab-in-use";

/** Reopens a closed tab: writes a dated line with name and reason behind its seal, which stays to be read. */
export async function reopen(port: WorkbookPort, name: string, by: string, reason: string, date: string): Promise<void> {
  if (by.trim() === "" || reason.trim() === "") throw invalid("reason", reason, "Reopening wants a name and a reason. Type both.");
  const found = await readJobInUse(port, name);
  const { tab, job } = found;
  if (!isClosed(tab)) throw noAnswer("Jobs", name, `Job ${quote(job.job)} is not closed, so there is nothing to reopen.`);
  const blocks = reopenBlocks(tab, { by: by.trim(), date, reason: reason.trim() });
  await port.apply([...blocks.map((block): Edit => ({ kind: "write", sheet: tab.sheet, ...block })), ...stateEdits(found, "open")]);
}
