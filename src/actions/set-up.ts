import { builtInProcedures } from "../planning/commissioning/procedure";
import { initialSettings } from "../planning/plan/read";
import { tableKeys, tables, type TableRows } from "../planning/plan/schema";
import { missingTables, planSetUp } from "../planning/plan/set-up";
import type { WorkbookPort } from "../workbook/port";

/** Which planning tables a workbook has and which set-up adds, by their names. */
export interface SetUpReport {
  readonly added: readonly string[];
  readonly kept: readonly string[];
}

/** Rows with which set-up fills the tables it adds: thresholds and built-in procedures. */
export function initialRows(): TableRows {
  return { settings: initialSettings(), ...builtInProcedures };
}

/** Adds a sheet for each planning table that the workbook lacks. What is there is not touched. */
export async function setUp(port: WorkbookPort): Promise<SetUpReport> {
  const workbook = await port.read();
  const missing = new Set(missingTables(workbook));
  const named = (lacking: boolean) => tableKeys.filter((key) => missing.has(key) === lacking).map((key) => tables[key].name);
  if (missing.size > 0) await port.apply(planSetUp(workbook, initialRows()).map((plan) => ({ kind: "add-sheet", plan })));
  return { added: named(true), kept: named(false) };
}
