import type { Scalar } from "../../sheet";
import type { CellWrite } from "../plan/changes";
import type { PlanCell, PlanModel } from "../plan/model";
import { type ColumnKey, columnsOf, type TableKey } from "../plan/schema";

/** stop: built like this it will not work, or puts the data at risk; warn: it may; note: worth knowing. */
export type Weight = "stop" | "warn" | "note";

/** Cells to write that put a finding right, and what that does, as a sentence. */
export interface Mend {
  readonly description: string;
  readonly writes: readonly CellWrite[];
}

/** One thing that a check has to say, at the cell it is about. */
export interface Finding {
  /** Name of the rule, such as `rack-overlap`. */
  readonly rule: string;
  readonly weight: Weight;
  readonly sheet: string;
  /** Row and column of the sheet, counted from 0. */
  readonly row: number;
  readonly column: number;
  /** At most 160 characters: what is wrong, and what to do about it. */
  readonly sentence: string;
  readonly mend?: Mend;
}

/** What one rule says about one cell; the runner adds the name of the rule and its weight. */
export type Remark = Omit<Finding, "rule" | "weight">;

export type RuleFamily = "references" | "capacity" | "addresses" | "resilience" | "intent" | "facility" | "procedure" | "safety of secrets";

/** One rule of the plan: a pure function from the plan to what it has to say. */
export interface Rule {
  /** Never changed once released: people filter by it. */
  readonly name: string;
  readonly family: RuleFamily;
  readonly weight: Weight;
  /** What a plan must keep to, as a sentence for the page of rules. */
  readonly meaning: string;
  /** What the proposed mend writes, as a sentence for the page of rules; a rule without mends has none. */
  readonly mends?: string;
  /** `today` is an ISO date, such as 2026-05-31: planning has no clock. */
  readonly check: (model: PlanModel, today: string) => Remark[];
}

/** Makes a remark about one cell of the plan; about the row's first cell where the table lacks that column. */
export function remarkOn(model: PlanModel, { table: key, row, column }: PlanCell, sentence: string, mend: Mend | null = null): Remark {
  const table = model.table(key);
  if (table === null) throw new Error(`A rule speaks about table ${key}, which the workbook does not have.`);
  const place = { sheet: table.sheet, row, column: table.columns[column] ?? table.firstColumn, sentence };
  return mend === null ? place : { ...place, mend };
}

/** Makes a remark about a column that is known by name where the rule is written; see `remarkOn`. */
export function remarkAt<Key extends TableKey>(
  model: PlanModel,
  table: Key,
  { row }: { readonly row: number },
  column: ColumnKey<Key>,
  sentence: string,
  mend: Mend | null = null,
): Remark {
  return remarkOn(model, { table, row, column }, sentence, mend);
}

/** Proposes to write one value into the cell that a remark is about; null where the table lacks its column. */
export function mendOn(model: PlanModel, cell: PlanCell, value: Exclude<Scalar, null | boolean>): Mend | null {
  const write = model.write(cell, value);
  if (write === null) return null;
  const header = columnsOf(cell.table).find(([name]) => name === cell.column)?.[1].header ?? cell.column;
  return { description: `Write ${value} into ${header}.`, writes: [write] };
}

/** Proposes to write one value into a column that is known by name where the rule is written; see `mendOn`. */
export function mendAt<Key extends TableKey>(
  model: PlanModel,
  table: Key,
  { row }: { readonly row: number },
  column: ColumnKey<Key>,
  value: Exclude<Scalar, null | boolean>,
): Mend | null {
  return mendOn(model, { table, row, column }, value);
}
