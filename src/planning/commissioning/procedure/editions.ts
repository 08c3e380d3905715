import { appendRows, joinChanges, noChanges, type Changes } from "../../plan/changes";
import type { PlanModel } from "../../plan/model";
import type { TableKey, TableRow } from "../../plan/schema";
import { foldName, invalid } from "../../text";
import type { WorkbookSnapshot } from "../../../sheet";
import { builtInProcedures } from "./built-in-procedures";
import { edition } from "./draft";

/** A built-in procedure beside that of its name in a plan. */
export interface ProcedureEdition {
  readonly procedure: string;
  /** False where the plan has none of that name. */
  readonly isThere: boolean;
  /** How many of its steps say something else in the plan, are not there, or are there alone. */
  readonly differing: number;
}

/** Columns of a step that say what it is; what a maker's guide says is the user's own. */
const told = ["section", "when", "do", "expect", "record", "unit", "bound", "tolerance", "tolerancePercent", "caution", "sign", "holdPoint"] as const;

const procedures = [...new Set(builtInProcedures.procedures.map(({ procedure }) => String(procedure)))];

/** Holds every built-in procedure of this edition against the plan. */
export function procedureEditions(model: PlanModel): ProcedureEdition[] {
  return procedures.map((procedure) => {
    const own = new Map(model.rowsWith("steps", "procedure", procedure).map((row) => [foldName(row.stepId), row]));
    const isThere = own.size > 0 || model.rowsWith("procedures", "procedure", procedure).length > 0;
    const built = stepsOf(procedure);
    const differs = (row: TableRow<"steps">): boolean => {
      const mine = own.get(foldName(String(row.stepId)));
      return mine === undefined || told.some((column) => textOf(mine[column]) !== textOf(row[column]));
    };
    const gone = [...own.keys()].filter((id) => !built.some(({ stepId }) => foldName(String(stepId)) === id));
    return { procedure, isThere, differing: built.filter(differs).length + gone.length };
  });
}

/** Says in a sentence which procedures of a plan are not those of this edition, and how to take these; "" where all are. */
export function describeOlder(editions: readonly ProcedureEdition[]): string {
  const older = editions.filter(({ isThere, differing }) => isThere && differing > 0);
  if (older.length === 0) return "";
  const names = older.map(({ procedure, differing }) => `${procedure} (${differing} of its steps)`).join(", ");
  return `Otherwise than edition ${edition}, because it is older or was changed here: ${names}. They stay as they are; to take one of this edition delete its rows in Procedures and Steps, then add it.`;
}

/** Adds the built-in procedures that a plan has none of that name of; nothing that stands there is changed. */
export function addProcedures(model: PlanModel, workbook: WorkbookSnapshot): Changes {
  const lacking = new Set(procedureEditions(model).filter(({ isThere }) => !isThere).map(({ procedure }) => procedure));
  return joinChanges(
    append(model, workbook, "procedures", builtInProcedures.procedures.filter(({ procedure }) => lacking.has(String(procedure)))),
    append(model, workbook, "steps", builtInProcedures.steps.filter(({ procedure }) => lacking.has(String(procedure)))),
  );
}

function append<Key extends TableKey>(model: PlanModel, workbook: WorkbookSnapshot, key: Key, rows: readonly TableRow<Key>[]): Changes {
  const table = model.table(key);
  if (rows.length === 0) return noChanges;
  if (table === null) throw invalid("Procedures", null, "The workbook lacks the table Procedures or Steps. Set up the tables first.");
  return appendRows(workbook, table, key, rows);
}

function stepsOf(procedure: string): readonly TableRow<"steps">[] {
  return builtInProcedures.steps.filter((row) => row.procedure === procedure);
}

/** Writes a cell so that a blank is one however it is kept. */
function textOf(value: string | number | boolean | null | undefined): string {
  return String(value ?? "").trim();
}
