import { isError, showCell, type Cell, type CellValue, type SheetSnapshot } from "../../../sheet";

/** One thing to be tried. */
export interface Probe {
  readonly id: string;
  /** What is done, as a sentence without its full stop. */
  readonly tried: string;
  /** What we count on, in the words in which it is found; null where nobody knows. */
  readonly expected: string | null;
}

/** Probes that are tried together. */
export interface Trial {
  readonly subject: string;
  readonly probes: readonly Probe[];
  /** Tries them on the scratch sheet; answers with what was found, in their order. */
  readonly find: (bench: Bench) => Promise<readonly string[]>;
}

/** The scratch sheet, and the ways to it. Rows and columns count from 0. */
export interface Bench {
  /** Writes cells by the same adapter as the add-in's actions. */
  write(row: number, column: number, cells: readonly (readonly (Cell | null)[])[]): Promise<void>;
  /** Reads the sheet by the same adapter, once its formulas are computed. */
  read(): Promise<SheetSnapshot>;
  /** Tells into how many rows and columns the formula of a cell spills; null where it does not. */
  spill(row: number, column: number): Promise<{ readonly rows: number; readonly columns: number } | null>;
  /** Sets something on the sheet itself. */
  set(queue: (sheet: Excel.Worksheet) => unknown): Promise<void>;
  /** Asks the sheet itself for something: what `queue` answers with is called once the request was answered. */
  ask<T>(queue: (sheet: Excel.Worksheet) => () => T): Promise<T>;
  /** Counts the changes of which the program tells while `work` runs, and for a while after it where it tells of none. */
  changesDuring(work: () => Promise<unknown>): Promise<number>;
}

/** Says in words what a cell holds. */
export function inWords(value: CellValue | undefined, formula?: string | null): string {
  if (formula !== null && formula !== undefined) return `the formula ${formula}`;
  if (value === null || value === undefined) return "an empty cell";
  if (isError(value)) return `the error ${value.error}`;
  if (value === "") return "an empty text";
  return `the ${typeof value === "number" ? "number" : typeof value === "boolean" ? "truth value" : "text"} ${showCell(value)}`;
}
