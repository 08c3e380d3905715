import type { IWorkbookData } from "@univerjs/core";
import { initialRows } from "../actions/set-up";
import { planSetUp, sampleRows } from "../planning/plan/set-up";
import { storeWorkbook } from "../workbook/engine/store-workbook";

/** Makes the sample plan as a workbook: every planning table, filled. */
export function sampleWorkbook(): IWorkbookData {
  return storeWorkbook(planSetUp({ sheets: [] }, { ...initialRows(), ...sampleRows() }));
}
