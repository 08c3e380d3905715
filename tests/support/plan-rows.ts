import { checkPlan, type Finding, type Rule } from "../../src/planning/checks";
import { builtInProcedures } from "../../src/planning/commissioning/procedure";
import { tableKeys, type TableKey, type TableRows } from "../../src/planning/plan/schema";
import { planSetUp, sampleRows } from "../../src/planning/plan/set-up";
import { columnLetters, type Scalar, type WorkbookSnapshot } from "../../src/sheet";
import { snapshotOf } from "./plain-workbook";

/** Rows of a plan that a test changes before it is checked. */
export type EditableRows = Record<TableKey, Record<string, Scalar>[]>;

/** Copies the sample plan, which no rule has anything to stop or warn about. */
export function sample(): EditableRows {
  return editable({ ...builtInProcedures, ...sampleRows() });
}

/** Copies the sample plan with a further pool, Trials, of 32 TB: ten drives of 4 TB under RAID 6. */
export function sampleWithSmallPool(): EditableRows {
  const rows = sample();
  rows.pools.push({ pool: "Trials", acrossArrays: "none" });
  rows.arrays.push({ array: "trial", site: "Bindery", drives: 10, driveSize: "4 TB", scheme: "RAID 6", spares: 0, pool: "Trials" });
  return rows;
}

/** Copies rows so that a test can change them; a table that is left out has none. */
export function editable(rows: TableRows): EditableRows {
  return Object.fromEntries(tableKeys.map((key) => [key, (rows[key] ?? []).map((row) => ({ ...row }))])) as EditableRows;
}

/** Sets thresholds of the Settings table. */
export function set(rows: EditableRows, setting: string, value: string): void {
  rows.settings.find((row) => row.setting === setting)!.value = value;
}

/** Writes a plan into a workbook, as set-up does. */
export function workbookWith(rows: EditableRows): WorkbookSnapshot {
  return snapshotOf(planSetUp({ sheets: [] }, rows));
}

/** Names the cell that a finding or a write is about by sheet, row and header, such as `Arrays 5 Bottom unit`. */
export function cellOf(workbook: WorkbookSnapshot, { sheet, row, column }: Pick<Finding, "sheet" | "row" | "column">): string {
  const header = workbook.sheets.find(({ name }) => name === sheet)?.values[3]?.[column];
  return `${sheet} ${row + 1} ${typeof header === "string" ? header : columnLetters(column)}`;
}

/** Lists the cells about which one rule has something to say, each with its sentence. */
export function found(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return check(rule, plan, ({ sentence }, cell) => [`${cell}: ${sentence}`]);
}

/** Lists only the cells about which one rule has something to say. */
export function cells(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return check(rule, plan, (_, cell) => [cell]);
}

/** Lists what the mends of one rule would write, by cell. */
export function mends(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return check(rule, plan, ({ mend }, _, workbook) => (mend?.writes ?? []).map((write) => `${cellOf(workbook, write)}: ${String(write.value)}`));
}

function check(rule: Rule, plan: EditableRows | WorkbookSnapshot, list: (finding: Finding, cell: string, workbook: WorkbookSnapshot) => string[]): string[] {
  const workbook = isWorkbook(plan) ? plan : workbookWith(plan);
  return checkPlan(workbook, [rule], "2026-06-01").flatMap((finding) => {
    // Every sentence keeps to the length that a person still reads.
    expect(finding.sentence.length).toBeLessThanOrEqual(160);
    return list(finding, cellOf(workbook, finding), workbook);
  });
}

/** Tells a workbook from rows, which have no table of that name. */
function isWorkbook(plan: EditableRows | WorkbookSnapshot): plan is WorkbookSnapshot {
  return "sheets" in plan;
}
