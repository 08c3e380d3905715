import type { Scheme } from "../../capacity";
import type { Bytes, Share } from "../../quantity";
import type { Problem } from "../../text";
import type { ChoiceColumn, Column, ColumnKind, MeasureColumn, Measures, TableKey, Tables } from "../schema";

/** What a cell of each kind is read as. A blank or unreadable cell is "" for texts, false for ticks and null for the rest. */
export interface Readings {
  text: string;
  /** One of the column's choices, spelt as the schema spells it. */
  choice: string;
  count: number | null;
  number: number | null;
  size: Bytes | null;
  share: Share | null;
  scheme: Scheme | null;
  /** ISO date, such as 2026-05-31. */
  date: string | null;
  tick: boolean;
  /** Formula columns are for people: nothing is read from them. */
  formula: null;
}

/** What the cells of a column are read as: a choice as one of its words, a measure in the type of its unit. */
export type Reading<Described extends Column> =
  Described extends ChoiceColumn<infer Choice> ? Choice | ""
  : Described extends MeasureColumn<infer Unit> ? Measures[Unit] | null
  : Readings[Described["kind"] & ColumnKind];

/** One row of a planning table: its columns by their keys, and where it stands. */
export type Row<Columns extends Record<string, Column> = Record<string, Column>> = {
  readonly [Key in keyof Columns]: Reading<Columns[Key]>;
} & {
  /** Row of the sheet, counted from 0. */
  readonly row: number;
  /** Every cell as a person reads it, by header text, the user's own columns included. Has no prototype. Not copied with the row. */
  readonly shown: Shown;
};

/**
 * What all rows are made as, whichever table and workbook they come from: an engine that runs rules over them sees the same few shapes again
 * and again, and keeps what it has compiled for them.
 */
export class ReadRow {
  readonly #show: (row: ReadRow) => Shown;

  constructor(
    readonly row: number,
    show: (row: ReadRow) => Shown,
  ) {
    this.#show = show;
  }

  /** What the row shows is asked for of few rows: it is worked out when it is. */
  get shown(): Shown {
    return this.#show(this);
  }
}

/** Every cell of a row as a person reads it, by header text. */
export type Shown = Readonly<Record<string, string>>;

/** Makes the row that stands where another does and says the same but for what is given; `show` says what a person then reads. */
export function heirOf<Own extends { readonly row: number }>(row: Own, given: Readonly<Record<string, unknown>>, show: () => Shown): Own {
  return Object.assign(new ReadRow(row.row, show), row, given);
}

/** One row of a planning table, by the key of the table. */
export type PlanRow<Key extends TableKey> = Row<Tables[Key]["columns"]>;

/** A cell that could not be read as its column asks. */
export interface CellFault {
  readonly table: TableKey;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly header: string;
  readonly problem: Problem;
}

/** Gives what the column of a row was read as, where the key of the column is known only when it runs. */
export function cellOf(row: { readonly row: number }, column: string): unknown {
  return (row as unknown as Readonly<Record<string, unknown>>)[column];
}

/** Gives the text of a column whose key is known only when it runs; "" where something else is read there. */
export function textOf(row: { readonly row: number }, column: string): string {
  const cell = cellOf(row, column);
  return typeof cell === "string" ? cell : "";
}
