import { builtInProcedures } from "../planning/commissioning/procedure";
import { groupBy } from "../planning/plan/model";
import { initialSettings, locateTable } from "../planning/plan/read";
import { isFurther, tableKeys, tables, type TableKey, type TableRows } from "../planning/plan/schema";
import { missingTables, planBringUp, planFormulas, planSetUp, planTables } from "../planning/plan/set-up";
import type { Edit, WorkbookPort } from "../workbook/port";
import { cellsEdit } from "./cells-edit";
import { readPlanSheets } from "./read-plan";

/** Which planning tables a workbook has and which set-up adds, by their names. */
export interface SetUpReport {
  readonly added: readonly string[];
  readonly kept: readonly string[];
  /** Tables of an earlier layout that got the columns they lacked. */
  readonly broughtUp: readonly string[];
  /** Tables in which formulas of an earlier layout, which nobody had changed, are those of today. */
  readonly mended: readonly string[];
}

/** Rows with which set-up fills the tables it adds: thresholds and built-in procedures. */
export function initialRows(): TableRows {
  return { settings: initialSettings(), ...builtInProcedures };
}

/**
 * Adds a sheet for each planning table that the workbook lacks, and to tables of an earlier layout, behind their last column, the columns that they
 * lack. Nothing that stands there is moved or changed, but for formulas as an earlier layout wrote them: they become those of today.
 */
export async function setUp(port: WorkbookPort): Promise<SetUpReport> {
  const workbook = await readPlanSheets(port);
  const missing = new Set(missingTables(workbook));
  const named = (lacking: boolean) => tableKeys.filter((key) => !isFurther(key) && missing.has(key) === lacking).map((key) => tables[key].name);
  const [broughtUp, formulas] = [planBringUp(workbook), planFormulas(workbook)];
  const edits: Edit[] = [
    ...planSetUp(workbook, initialRows()).map((plan): Edit => ({ kind: "add-sheet", plan })),
    ...broughtUp.flatMap(({ sheet, table, area, row, column, cells }): Edit[] => [{ kind: "write", sheet, row, column, cells }, { kind: "resize-table", sheet, table, area }]),
    ...[...groupBy(formulas, ({ sheet }) => sheet)].map(([sheet, some]) => cellsEdit(sheet, some.map(({ row, column, formula }) => ({ row, column, cell: { formula } })))),
  ];
  if (edits.length > 0) await port.apply(edits);
  return { added: named(true), kept: named(false), broughtUp: broughtUp.map(({ key }) => tables[key].name), mended: [...new Set(formulas.map(({ key }) => tables[key].name))] };
}

/** Adds the sheets of those of some planning tables that the workbook lacks, behind all others, and leaves in sight what was. */
export async function addTables(port: WorkbookPort, keys: readonly TableKey[]): Promise<void> {
  const workbook = await readPlanSheets(port, { only: "values" });
  const edits = planTables(workbook, keys.filter((key) => locateTable(workbook, key) === null)).map((plan): Edit => ({ kind: "add-sheet", plan }));
  if (edits.length === 0) return;
  const inSight = await port.selection().catch(() => null);
  await port.apply([...edits, ...(inSight === null ? [] : [{ kind: "select", ...inSight } as const])]);
}

/** First cell of the first row of a table that set-up has just made. */
const firstCell = { row: 4, column: 0, rows: 1, columns: 1 };

/** Adds the sheet of a planning table that the workbook lacks, behind that of the table before it in their order, and shows it. */
export async function addTable(port: WorkbookPort, key: TableKey): Promise<void> {
  const workbook = await readPlanSheets(port);
  const after = tableKeys.slice(0, tableKeys.indexOf(key)).flatMap((one) => locateTable(workbook, one)?.sheet.name ?? []).at(-1);
  const edits = planTables(workbook, [key]).flatMap((plan): Edit[] => [{ kind: "add-sheet", plan, after }, { kind: "select", sheet: plan.name, area: firstCell }]);
  if (edits.length > 0) await port.apply(edits);
}
