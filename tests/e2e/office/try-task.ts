import { readFileSync } from "node:fs";
import { cellAddress, type WorkbookSnapshot } from "../../../src/sheet";
import type { WorkbookDocument } from "../../../src/workbook/document/workbook-document";
import { documentOf } from "../../../src/workbook/engine/document-of";
import type { StoredWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import type { WorkbookPage } from "../support/workbook-page";
import { Hands, type Way } from "./hands";
import { Outcome, type OfficeTask } from "./office-task";

/**
 * Does a task on the workbook that is open, undoes it, does it again and undoes that, so that the next one finds the workbook as it was.
 *
 * Throws where something does not hold then, once it is undone, or once it is done again.
 */
export async function tryTask(workbook: WorkbookPage, task: OfficeTask, way: Way, scratch: string): Promise<void> {
  const hands = new Hands(workbook, way);
  const before = await factsOf(workbook);
  await task[way](hands);
  await workbook.typed();
  // As one text: the driver takes whole workbooks apart value by value.
  const model = JSON.parse(await workbook.page.evaluate(async () => JSON.stringify(await globalThis.baywright.port.read()))) as WorkbookSnapshot;
  await task.holds(new Outcome(model, await saved(hands, scratch), hands));
  const { undo: steps } = task;
  if (steps === undefined) {
    same("What was there before is not as it was", before, await factsOf(workbook));
    return;
  }
  const after = await factsOf(workbook);
  if (after === before) throw new Error("Nothing is changed that could be undone.");
  await step(hands, "undo", steps);
  same("Undone, it is not as before", before, await factsOf(workbook));
  await step(hands, "redo", steps);
  same("Done again, it is not as when it was done", after, await factsOf(workbook));
  await step(hands, "undo", steps);
}

async function step(hands: Hands, what: "undo" | "redo", times: number): Promise<void> {
  for (let time = 0; time < times; time += 1) {
    if (hands.way === "mouse") await hands.tool(`univer.command.${what}`);
    else await hands.press(what === "undo" ? "Control+z" : "Control+y");
  }
}

/** Saves the workbook, by the keys or by the button, and reads the file. */
async function saved(hands: Hands, scratch: string): Promise<WorkbookDocument> {
  if (hands.way === "mouse") await hands.workbook.save(scratch);
  else {
    const waiting = hands.page.waitForEvent("download");
    await hands.page.keyboard.press("Control+s");
    await (await waiting).saveAs(scratch);
  }
  return readFile(new Uint8Array(readFileSync(scratch))).document;
}

/** What a workbook holds, a line for each fact: of sheets all but what is told of their cells, and each cell with its look. */
async function factsOf(workbook: WorkbookPage): Promise<string> {
  const stored = JSON.parse(await workbook.page.evaluate(() => JSON.stringify(globalThis.baywright.live.store()))) as StoredWorkbook;
  const { sheets, looks, names } = documentOf(stored);
  return [
    ...names.map((name) => JSON.stringify(name)),
    ...sheets.flatMap(({ name, cells, ...facts }) => [
      // Where the sheet is in the engine and what moved in it meanwhile are no facts of it.
      ...Object.entries({ ...facts, id: undefined, moves: undefined }).map(([key, fact]) => `${name} ${key}: ${JSON.stringify(fact)}`),
      ...[...cells].flatMap(([row, line]) => [...line].map(([column, { look, ...cell }]) => `${name}!${cellAddress({ row, column })} ${JSON.stringify([cell, looks[look]])}`)),
    ]),
  ].join("\n");
}

function same(what: string, wanted: string, found: string): void {
  if (wanted === found) return;
  const [one, other] = [new Set(wanted.split("\n")), new Set(found.split("\n"))];
  const gone = [...one].filter((line) => !other.has(line)).slice(0, 3);
  const come = [...other].filter((line) => !one.has(line)).slice(0, 3);
  throw new Error(`${what}: missing ${gone.join(" | ").slice(0, 600)}; instead ${come.join(" | ").slice(0, 600)}.`);
}
