import { sameSheetName, showCell, type SheetPlan, type WorkbookSnapshot } from "../sheet";
import { sheetNameWith } from "../planning/commissioning/tab";
import type { Edit, WorkbookPort } from "../workbook/port";

/**
 * Writes a sheet that is made anew each time in the place of the one made before, which begins with `mark` in A1.
 *
 * The new one is written whole before the old one goes. A sheet of that name that is not ours is left alone: ours gets a number.
 */
export async function replaceSheet(port: WorkbookPort, workbook: WorkbookSnapshot, mark: string, plan: SheetPlan): Promise<string> {
  const names = workbook.sheets.map(({ name }) => name);
  const before = workbook.sheets.find(({ name, values }) => sameSheetName(name, plan.name) && showCell(values[0]?.[0]).startsWith(mark));
  const isTaken = names.some((name) => sameSheetName(name, plan.name));
  const name = isTaken ? sheetNameWith(plan.name, "new", names) : plan.name;
  const edits: Edit[] = [{ kind: "add-sheet", plan: { ...plan, name }, ...(before === undefined ? {} : { after: before.name }) }];
  if (before !== undefined) edits.push({ kind: "delete-sheet", sheet: before.name }, { kind: "rename-sheet", sheet: name, name: before.name });
  await port.apply(edits);
  return before?.name ?? name;
}
