import type { IWorkbookData } from "@univerjs/core";
import type { SheetPlan } from "../../sheet";
import { assembleWorkbook, makeStyleKeeper } from "./assemble-workbook";
import { storeSheet } from "./store-sheet";

/** Makes a whole workbook of sheet plans, as the engine stores it: one step, where adding sheet by sheet computes again after each. */
export function storeWorkbook(plans: readonly SheetPlan[]): IWorkbookData {
  const { styles, keep } = makeStyleKeeper();
  let counter = 0;
  return assembleWorkbook(plans.map((plan) => storeSheet(plan, keep, () => `p${(counter += 1)}`)), styles);
}
