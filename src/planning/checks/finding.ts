import type { CellWrite } from "../plan/changes";
import { tables, type Table, type TableKey, type Tables } from "../plan/schema";
import type { PlanIndex } from "../plan/model";

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

export type RuleFamily = "references" | "capacity" | "addresses" | "resilience" | "facility" | "procedure" | "safety of secrets";

/** One rule of the plan: a pure function from the tables to what it has to say. */
export interface Rule {
  /** Never changed once released: people filter by it. */
  readonly name: string;
  readonly family: RuleFamily;
  readonly weight: Weight;
  /** What a plan must keep to, as a sentence for the page of rules. */
  readonly meaning: string;
  /** What the proposed mend writes, as a sentence for the page of rules; a rule without mends has none. */
  readonly mends?: string;
  readonly check: (index: PlanIndex) => Remark[];
}

type ColumnKey<Key extends TableKey> = keyof Tables[Key]["columns"] & string;

/** Makes a remark about one column of a row; about the row's first cell where the table lacks that column. */
export function remarkAt<Key extends TableKey>(
  index: PlanIndex,
  key: Key,
  row: { readonly row: number },
  column: ColumnKey<Key>,
  sentence: string,
  mend?: Mend | null,
): Remark {
  const table = index.table(key)!;
  const place = { sheet: table.sheet, row: row.row, column: table.columns[column] ?? table.firstColumn, sentence };
  return mend === null || mend === undefined ? place : { ...place, mend };
}

/** Proposes to write one value into the column of a row that a remark is about; null where the table lacks it. */
export function mendAt<Key extends TableKey>(
  index: PlanIndex,
  key: Key,
  row: { readonly row: number },
  column: ColumnKey<Key>,
  value: string | number,
): Mend | null {
  const { header } = (tables[key] as Table).columns[column]!;
  const write = index.write(key, row.row, column, value);
  return write === null ? null : { description: `Write ${value} into ${header}.`, writes: [write] };
}
