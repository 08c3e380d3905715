import { columnNumber, sheetSize, type Area, type Cell } from "../../sheet";

/** Formulas of one row that others repeat: where they stand first, and the areas that say the same of their own rows. */
export interface FormulaRun {
  readonly source: Area;
  readonly copies: readonly Area[];
}

/**
 * Finds formulas that only repeat, in their own row, what an earlier row says in the same columns.
 *
 * A tab asks the same of every step, so that a few rows of formulas stand for hundreds. Formulas side by side go together:
 *
 * ```
 * =A2+1  =B2*2    source: the first row
 * =A3+1  =B3*2    copies: both rows below, as one area
 * =A4+1  =B4*2
 * ```
 */
export function formulaRuns(rows: readonly (readonly Cell[])[]): FormulaRun[] {
  const runs = new Map<string, { source: Area; copies: Area[] }>();
  rows.forEach((line, row) => {
    for (const { column, formulas } of runsOf(line)) {
      const key = `${column} ${formulas.map((formula) => relativeForm(formula, row)).join("\n")}`;
      const run = runs.get(key);
      const above = run?.copies.at(-1);
      if (run === undefined) runs.set(key, { source: { row, column, rows: 1, columns: formulas.length }, copies: [] });
      else if (above !== undefined && above.row + above.rows === row) run.copies[run.copies.length - 1] = { ...above, rows: above.rows + 1 };
      else run.copies.push({ row, column, rows: 1, columns: formulas.length });
    }
  });
  return [...runs.values()].filter(({ copies }) => copies.length > 0);
}

function runsOf(line: readonly Cell[]): { column: number; formulas: string[] }[] {
  const runs: { column: number; formulas: string[] }[] = [];
  line.forEach(({ formula }, column) => {
    if (formula === undefined) return;
    const last = runs.at(-1);
    if (last !== undefined && last.column + last.formulas.length === column) last.formulas.push(formula);
    else runs.push({ column, formulas: [formula] });
  });
  return runs;
}

/** Text in quotes, what stands in brackets, and cells such as A1 or $A1; whole rows such as 2:3 too. */
const parts = /"(?:[^"]|"")*"|'(?:[^']|'')*'!|\[|(?<![\w.$])\$?\d+:\$?\d+|(?<![\w.])(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?![\w.(!])/gi;

/**
 * Writes a formula so that it is the same text wherever it says the same of its own row: A5 in row 7 becomes A(-2), while A$5 stays.
 *
 * Columns are left as they are, so only formulas of one column compare. What is not understood safely, such as whole rows and columns of
 * a table, comes out as it is behind its row, and is the same as nothing else.
 */
export function relativeForm(formula: string, row: number): string {
  const unclear: string[] = [];
  const form = formula.replace(parts, (part: string, dollar = "", letters?: string, fixed?: string, digits?: string) => {
    if (part.startsWith('"') || part.startsWith("'")) return part;
    const number = Number(digits);
    if (letters === undefined) unclear.push(part);
    else if (fixed === "" && number <= sheetSize.rows && columnNumber(letters) !== null) return `${dollar}${letters}(${number - 1 - row})`;
    return part;
  });
  return unclear.length > 0 ? `${row} ${formula}` : form;
}
