import { checkPlan, type Finding, type Rule } from "../../src/planning/checks";
import { builtInProcedures } from "../../src/planning/commissioning";
import { columnLetters, planSetUp, sampleRows, type Scalar, type TableKey, type TableRows, type WorkbookSnapshot } from "../../src/planning/workbook-model";
import { snapshotOf } from "./plain-workbook";

/** Rows of a plan that a test changes before it is checked. */
export type EditableRows = Record<TableKey, Record<string, Scalar>[]>;

/** Copies the sample plan, which no rule has anything to stop or warn about. */
export function sample(): EditableRows {
  const rows = { ...builtInProcedures, ...sampleRows() } as Readonly<Partial<Record<TableKey, readonly Readonly<Record<string, Scalar>>[]>>>;
  const copy = (key: TableKey): Record<string, Scalar>[] => (rows[key] ?? []).map((row) => ({ ...row }));
  const keys: readonly TableKey[] = ["settings", "sites", "racks", "feeds", "networks", "switches", "hosts", "links", "clusters", "pools", "arrays", "ports", "procedures", "steps", "prompts", "jobs", "quote"];
  return Object.fromEntries(keys.map((key) => [key, copy(key)])) as EditableRows;
}

/** Sets thresholds of the Settings table. */
export function set(rows: EditableRows, setting: string, value: string): void {
  rows.settings.find((row) => row.setting === setting)!.value = value;
}

/** Writes a plan into a workbook, as set-up does. */
export function workbookWith(rows: EditableRows): WorkbookSnapshot {
  return snapshotOf(planSetUp({ sheets: [] }, rows as unknown as TableRows));
}

/** Names the cell that a finding or a write is about, such as `Arrays!K5`. */
export function cellOf({ sheet, row, column }: Pick<Finding, "sheet" | "row" | "column">): string {
  return `${sheet}!${columnLetters(column)}${row + 1}`;
}

/** Lists what one rule finds in a plan, by cell. */
export function found(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return findings(rule, plan).map((finding) => `${cellOf(finding)} ${finding.sentence}`);
}

/** Lists only the cells of what one rule finds. */
export function cells(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return findings(rule, plan).map(cellOf);
}

/** Lists what the mends of one rule would write, by cell. */
export function mends(rule: Rule, plan: EditableRows | WorkbookSnapshot): string[] {
  return findings(rule, plan).flatMap(({ mend }) => (mend?.writes ?? []).map((write) => `${cellOf(write)} ${String(write.value)}`));
}

function findings(rule: Rule, plan: EditableRows | WorkbookSnapshot): Finding[] {
  const workbook = "sheets" in plan ? (plan as unknown as WorkbookSnapshot) : workbookWith(plan);
  const list = checkPlan(workbook, [rule]);
  for (const { sentence } of list) expect(sentence.length).toBeLessThanOrEqual(160);
  return list;
}
