import { findOptions, optionsMark, planOptions } from "../planning/options";
import { PlanModel } from "../planning/plan/model";
import type { TableKey } from "../planning/plan/schema";
import type { WorkbookPort } from "../workbook/port";
import { readPlanValues, readShown } from "./read-plan";
import { replaceSheet } from "./replace-sheet";
import { addTables, setUp } from "./set-up";

/** Adds the sheet of options and answers with its name; one that is there is left as it is, with all that was typed into it. */
export async function addOptions(port: WorkbookPort): Promise<{ readonly sheet: string; readonly isNew: boolean }> {
  const workbook = await readShown(port);
  const found = findOptions(workbook);
  if (found !== null) return { sheet: found.name, isNew: false };
  return { sheet: await replaceSheet(port, workbook, optionsMark, planOptions(new PlanModel(workbook))), isNew: true };
}

/** Adds those of some tables of set-up and further ones that the workbook lacks. */
export async function addLackingTables(port: WorkbookPort, keys: readonly TableKey[]): Promise<void> {
  const model = new PlanModel(await readPlanValues(port));
  const lacking = keys.filter((key) => model.table(key) === null);
  if (lacking.length === 0) return;
  await setUp(port);
  await addTables(port, lacking);
}
