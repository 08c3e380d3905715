import { showCell, type Scalar } from "../../../sheet";
import { invalid, quote } from "../../text";
import { appendRows, joinChanges, noChanges, type Changes } from "../changes";
import type { PlanModel } from "../model";
import { nameColumn, tableKeys, tables, type TableKey, type TableRow, type TableRows } from "../schema";

/** Plans to add rows to the tables of a plan, in the order of the tables; refuses where the workbook lacks one of them. */
export function addedRows(model: PlanModel, rows: TableRows): Changes {
  return joinChanges(...tableKeys.map((key) => addedTo(model, key, rows)));
}

function addedTo<Key extends TableKey>(model: PlanModel, key: Key, rows: Pick<TableRows, Key>): Changes {
  const added: readonly TableRow<Key>[] = rows[key] ?? [];
  const table = model.table(key);
  if (added.length === 0) return noChanges;
  if (table === null) throw invalid(tables[key].name, null, `The workbook has no table ${tables[key].name}. Choose Set up tables first.`);
  return appendRows(model.workbook, table, key, added);
}

/** Refuses new rows whose names the plan has already. */
export function refuseTakenNames(model: PlanModel, rows: TableRows): void {
  for (const key of tableKeys) {
    if (!namesRows(key)) continue;
    for (const row of (rows[key] ?? []) as readonly Readonly<Record<string, Scalar | undefined>>[]) refuseTaken(model, key, showCell(row[nameColumn(key)]));
  }
}

/** Tells whether each row of a table has a name of its own. */
function namesRows(key: TableKey): boolean {
  return key !== "assumptions" && key !== "hostPorts" && key !== "modelPorts";
}

function refuseTaken(model: PlanModel, key: TableKey, name: string): void {
  if (model.find(key, name) === null) return;
  throw invalid(tables[key].name, name, `${quote(name)} stands in ${tables[key].name} already. Write another name, or add to its rows by hand.`);
}
