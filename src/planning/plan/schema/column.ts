import type { Kilograms, Millimetres, NumberRule, Watts } from "../../quantity";
import type { TableKey } from "./table-keys";

/**
 * How the cells of a column are read.
 *
 * text: as typed; count: whole number from 0; number; size, share, scheme: as the functions read them; date: a date cell or ISO text;
 * choice: one of `choices`, without case; tick: yes, x, TRUE or a mark; formula: for people, never read.
 */
export type ColumnKind = "text" | "count" | "number" | "size" | "share" | "scheme" | "date" | "choice" | "tick" | "formula";

/** One column of a planning table. */
export interface Column<Kind extends ColumnKind = ColumnKind> {
  readonly kind: Kind;
  /** Text of the header cell, by which the column is found. */
  readonly header: string;
  /** What belongs here, for the help of the cell and the documentation. */
  readonly meaning: string;
  /** What may stand here, of a choice; nothing else is read. */
  readonly choices?: readonly string[];
  /** What is usual here and offered in a list, beside which anything may be typed. */
  readonly suggestions?: readonly string[];
  /** Table whose first required column says what may stand here. */
  readonly from?: TableKey;
  /** True where a cell may name several rows of that table, with commas between. */
  readonly several?: true;
  /** True where a row without it says nothing. */
  readonly required?: true;
  /**
   * Native or BAY formula a new row begins with; `[Header]` stands for the cell of that column in the same row, `[Table.Header]` for
   * all cells of a column of another table.
   */
  readonly formula?: string;
  /** Formulas with which rows began before this one: set-up writes today's over those that nobody changed. */
  readonly formerly?: readonly string[];
  /** True where a size may be 0. */
  readonly zero?: true;
  /** What a count or a number may be, where not any can be meant. */
  readonly within?: NumberRule;
  /** Version of the layout that brought it, where that was not the first: set-up adds it to tables of an earlier one. */
  readonly since?: number;
  /** Width in characters of a column of long text, which wraps; without it the width follows what stands there. */
  readonly width?: number;
}

/** A column that holds one of a few words: its rows are typed by them. */
export interface ChoiceColumn<Choice extends string = string> extends Column<"choice"> {
  readonly choices: readonly Choice[];
}

/** Units whose numbers have a type of their own in the rows that are read, so that watts are never added to kilograms. */
export interface Measures {
  W: Watts;
  kg: Kilograms;
  mm: Millimetres;
}

/** A column of numbers in a unit that has a type of its own. */
export interface MeasureColumn<Unit extends keyof Measures = keyof Measures> extends Column<"number"> {
  readonly unit: Unit;
}

type Extra = Partial<Omit<Column, "kind" | "header" | "meaning" | "choices">>;

const column =
  <Kind extends ColumnKind>(kind: Kind) =>
  (header: string, meaning: string, extra: Extra = {}): Column<Kind> => ({ ...extra, kind, header, meaning });

export const text = column("text");
export const count = column("count");
export const number = column("number");
export const size = column("size");
export const share = column("share");
export const scheme = column("scheme");
export const date = column("date");
export const tick = column("tick");
export const formula = column("formula");

/** Describes a column that holds one of a few words. */
export function choice<const Choice extends string>(header: string, meaning: string, choices: readonly Choice[], extra: Extra = {}): ChoiceColumn<Choice> {
  return { ...extra, kind: "choice", header, meaning, choices };
}

/** Describes a column of numbers in a unit that has a type of its own, none of them below 0. */
export function measure<const Unit extends keyof Measures>(header: string, meaning: string, unit: Unit): MeasureColumn<Unit> {
  return { kind: "number", header, meaning, unit, within: { min: 0, max: 10_000_000, example: 800 } };
}

/** Marks a column without which a row says nothing; the first such column of a table names its rows. */
export const named = { required: true } as const;

/** What one of something may cost. */
export const costs: NumberRule = { min: 0, max: 1e12, example: 450 };
