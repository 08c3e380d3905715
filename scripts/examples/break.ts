import type { TableKey } from "../../src/planning/plan/schema";
import type { Scalar } from "../../src/sheet";

export type Row = Record<string, Scalar>;
export type Rows = Record<TableKey, Row[]>;

/** One way in which the plan is broken, and the cells about which a rule then has something to say. */
export interface Break {
  readonly what: string;
  readonly change: (rows: Rows) => void;
  /** Rule and cell: sheet, row as the sheet counts it, header. */
  readonly found: readonly (readonly [rule: string, cell: string])[];
}

/** Writes cells of a row of the plan. */
export function set(row: Row | undefined, change: Row): void {
  Object.assign(row!, change);
}
