import { setTimeout as pass } from "node:timers/promises";
import type { WorkbookPage } from "./workbook-page";

/** How the page is left while somebody types. */
export type Leaving = "reload" | "close" | "kill";

/** What had been typed into the first column when the page was left. */
export interface Typed {
  /** When the Enter of each entry was pressed, in milliseconds. */
  readonly entered: readonly number[];
  /** When the page was left. */
  readonly left: number;
  /** How many entries stood in their cells when the page last said that all is kept. */
  readonly saidKept: number;
}

/**
 * Types an entry a row, "entry 0" and on, into the first column of a new plan. `leave` is called `milliseconds` after the first of them were said to be
 * kept, in the midst of the typing; answers with what was typed by then.
 */
export async function typeUntil(workbook: WorkbookPage, milliseconds: number, leave: () => Promise<unknown>): Promise<Typed> {
  const { page } = workbook;
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.click(0, 0);
  const entered: number[] = [];
  const enter = async () => {
    await page.keyboard.insertText(`entry ${entered.length}`);
    await page.keyboard.press("Enter");
    entered.push(Date.now());
  };
  await enter();
  await workbook.typed();
  await page.getByText("Kept in this browser").waitFor();
  let saidKept = 1;
  let isOver = false;
  const hasEnded = () => isOver;
  const typing = (async () => {
    while (!hasEnded()) {
      await enter();
      const { state, rows } = await page.evaluate(() => {
        const cells = globalThis.baywright.live.workbook.getActiveSheet().getCellMatrix();
        let count = 0;
        while ((cells.getValue(count, 0)?.v ?? "") !== "") count += 1;
        return { state: document.querySelector(".plan-state")!.textContent, rows: count };
      });
      if (state === "Kept in this browser") saidKept = Math.max(saidKept, rows);
      await pass(60);
    }
  })().catch((thrown: unknown) => {
    // What was being asked of the page when it was left is refused.
    if (!hasEnded()) throw thrown;
  });
  await pass(milliseconds);
  const left = Date.now();
  isOver = true;
  await leave();
  await typing;
  return { entered: entered.filter((at) => at <= left), left, saidKept };
}

/** The entries that the page has after it was opened again, which must be those that were typed first, none left out. */
export async function entriesIn(workbook: WorkbookPage): Promise<number> {
  const { values } = await workbook.sheet("Sheet1");
  values.forEach(([text], entry) => {
    if (text !== `entry ${entry}`) throw new Error(`Row ${entry} has ${JSON.stringify(text)}.`);
  });
  return values.length;
}
