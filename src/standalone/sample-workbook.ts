import type { IWorkbookData } from "@univerjs/core";
import { initialRows } from "../actions/set-up";
import { planSetUp, sampleRows } from "../planning/plan/set-up";
import { storeWorkbook } from "../workbook/engine/store-workbook";
import { withFront } from "../workbook/engine/stored-sheet";

/** Makes the sample plan as a workbook: every planning table, filled. In front is the one that people begin with, which has room below it for a first formula. */
export function sampleWorkbook(): IWorkbookData {
  return withFront(storeWorkbook(planSetUp({ sheets: [] }, { ...initialRows(), ...sampleRows() })), "Sites");
}
