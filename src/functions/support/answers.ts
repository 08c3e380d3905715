/** What one cell of an answer can hold. */
export type Shown = string | number | boolean;

/** What a function answers: how the host is told of it, and how what was computed becomes cells. */
export interface Answer<Computed, Cells> {
  /** What the answer is, in words for the help page. */
  readonly returns: string;
  /** Type of every cell, where they are all of one. */
  readonly type?: "number" | "string" | "boolean";
  /** The answer fills as many cells as it needs. */
  readonly spills: boolean;
  /** Names of the columns, which are the first row of the answer; null where it has no header. */
  readonly columns: readonly string[] | null;
  readonly toCells: (computed: Computed) => Cells;
}

/** Answers one number. */
export const number = (returns: string): Answer<number, number> => one(returns, "number");

/** Answers one text. */
export const text = (returns: string): Answer<string, string> => one(returns, "string");

/** Answers TRUE or FALSE. */
export const truth = (returns: string): Answer<boolean, boolean> => one(returns, "boolean");

/** Answers one number, or a range of cells, as what it is asked about. */
export const numbers = (returns: string): Answer<number | Shown[][], number | Shown[][]> => ({ returns, spills: false, columns: null, toCells: (computed) => computed });

/** Answers texts, one below the other. */
export function column(returns: string): Answer<readonly string[], string[][]> {
  return { returns, type: "string", spills: true, columns: null, toCells: (texts) => texts.map((text) => [text]) };
}

/** Answers rows below a header row of `columns`. */
export function table(columns: readonly string[], returns: string): Answer<readonly (readonly Shown[])[], (readonly Shown[])[]> {
  return { returns, spills: true, columns, toCells: (rows) => below(columns, rows) };
}

/** Does as `table`, with one column more at the end where the rows have it. */
export function tableWith(columns: readonly string[], last: string, returns: string): Answer<readonly (readonly Shown[])[], (readonly Shown[])[]> {
  return { ...table(columns, returns), toCells: (rows) => below(rows.some((row) => row.length > columns.length) ? [...columns, last] : columns, rows) };
}

/** Does as `table`, where every cell is text. */
export function textTable(columns: readonly string[], returns: string): Answer<readonly (readonly string[])[], (readonly string[])[]> {
  return { returns, type: "string", spills: true, columns, toCells: (rows) => below(columns, rows) };
}

/** Puts rows below their header; there may be a hundred thousand. */
function below<Cell extends Shown>(header: readonly Cell[], rows: readonly (readonly Cell[])[]): (readonly Cell[])[] {
  return new Array<readonly Cell[]>(header).concat(rows);
}

function one<Value extends Shown>(returns: string, type: "number" | "string" | "boolean"): Answer<Value, Value> {
  return { returns, type, spills: false, columns: null, toCells: (computed) => computed };
}
