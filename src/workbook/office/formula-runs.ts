import { relativeForm, type Area, type Cell } from "../../sheet";

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
