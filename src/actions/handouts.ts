import { labelsMark, namesMark, outlookMark, planLabels, planNames, planOutlook, planSwitchList, switchListMark } from "../planning/handouts";
import { partsMark, planPartsSheet } from "../planning/parts";
import { PlanModel } from "../planning/plan/model";
import { sameSheetName, showCell } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { readShown } from "./read-plan";
import { replaceSheet } from "./replace-sheet";

/** Writes the sheet that lists the ports of every switch, in place of an earlier one, and answers with its name. */
export async function writeSwitchList(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  return replaceSheet(port, workbook, switchListMark, planSwitchList(new PlanModel(workbook), madeAt));
}

/** Writes the sheet of the names of the plan in a domain, in place of an earlier one, and answers with its name. */
export async function writeNames(port: WorkbookPort, domain: string, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  return replaceSheet(port, workbook, namesMark, planNames(new PlanModel(workbook), domain, madeAt));
}

/** Writes the sheet of labels for the cables of the plan, in place of an earlier one, and answers with its name. */
export async function writeLabels(port: WorkbookPort): Promise<string> {
  const workbook = await readShown(port);
  return replaceSheet(port, workbook, labelsMark, planLabels(new PlanModel(workbook)));
}

/** Writes the sheet that says when pools and arrays will be full, in place of an earlier one whose yellow cells it keeps, and answers with its name. */
export async function writeOutlook(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  const before = (await port.read([outlookMark])).sheets.find(({ name, values }) => sameSheetName(name, outlookMark) && showCell(values[0]?.[0]) === outlookMark) ?? null;
  return replaceSheet(port, workbook, outlookMark, planOutlook(new PlanModel(workbook), madeAt, before));
}

/** Writes the sheet of the parts of the plan, in place of an earlier one, and answers with its name. */
export async function writePartsSheet(port: WorkbookPort, madeAt: string): Promise<string> {
  const workbook = await readShown(port);
  return replaceSheet(port, workbook, partsMark, planPartsSheet(new PlanModel(workbook), madeAt));
}
