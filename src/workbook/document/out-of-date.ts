import type { Area } from "../../sheet";
import { InputReader, type FormulaInputs } from "./formula-inputs";
import { mayLookAnywhere } from "./formula-kind";
import type { WorkbookDocument } from "./workbook-document";

/** A cell by its sheet's id and its place. */
export interface SheetCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Cells of one sheet that are looked for in areas. */
class CellSet {
  private readonly rows = new Map<number, Set<number>>();
  private left = Infinity;
  private right = -1;

  add(row: number, column: number): void {
    const line = this.rows.get(row);
    if (line === undefined) this.rows.set(row, new Set([column]));
    else line.add(column);
    this.left = Math.min(this.left, column);
    this.right = Math.max(this.right, column);
  }

  has(row: number, column: number): boolean {
    return this.rows.get(row)?.has(column) === true;
  }

  meets({ row, column, rows, columns }: Area): boolean {
    if (column > this.right || column + columns <= this.left) return false;
    const inside = (line: Set<number>) => [...line].some((one) => one >= column && one < column + columns);
    if (rows > this.rows.size) return [...this.rows].some(([at, line]) => at >= row && at < row + rows && inside(line));
    for (let at = row; at < row + rows; at += 1) {
      const line = this.rows.get(at);
      if (line !== undefined && inside(line)) return true;
    }
    return false;
  }
}

/** A formula and what it looks at. */
interface Inputs extends FormulaInputs, SheetCell {
  readonly isKept: boolean;
}

/**
 * Lists the formulas whose figures no longer follow from what they look at: those that keep their figure (`isKept`) behind one of the `changed`
 * cells, and everything computed from them.
 *
 * A formula whose inputs cannot be read off it, as it finds them by a text, counts as looking at everything.
 */
export function outOfDate(document: WorkbookDocument, changed: Iterable<SheetCell>, isKept: (cell: SheetCell) => boolean): SheetCell[] {
  const sets = new Map<string, CellSet>(document.sheets.map(({ id }) => [id, new CellSet()]));
  const touched = new Set<string>();
  const all = [...changed];
  for (const { sheet, row, column } of all) {
    sets.get(sheet)?.add(row, column);
    touched.add(sheet);
  }
  if (touched.size === 0) return [];
  const stale = new Map<string, CellSet>(document.sheets.map(({ id }) => [id, new CellSet()]));
  const found: SheetCell[] = [];
  let known = -1;
  let open: Inputs[] = [];
  for (let before = -1; before !== found.length; ) {
    // A formula on a sheet that was not touched may be behind one that is found out of date on it.
    for (const { sheet } of found) touched.add(sheet);
    // As long as nothing is out of date, only what keeps its figure can be.
    const isMeant = found.length === 0 ? isKept : () => true;
    if (known !== found.length) open = allInputs(document, touched, [...all, ...found], isKept, isMeant).filter(({ sheet, row, column }) => !stale.get(sheet)!.has(row, column));
    known = found.length;
    before = found.length;
    open = open.filter((formula) => {
      const { sheet, row, column, areas, anything } = formula;
      const looksAt = (sets: ReadonlyMap<string, CellSet>) => areas.some((one) => sets.get(one.sheet)?.meets(one.area) === true);
      const isStale = formula.isKept ? anything || looksAt(sets) || looksAt(stale) : looksAt(stale);
      if (!isStale) return true;
      stale.get(sheet)!.add(row, column);
      found.push({ sheet, row, column });
      return false;
    });
  }
  return found;
}

function allInputs(
  document: WorkbookDocument,
  touched: ReadonlySet<string>,
  changed: readonly SheetCell[],
  isKept: (cell: SheetCell) => boolean,
  isMeant: (cell: SheetCell) => boolean,
): Inputs[] {
  const reader = new InputReader(document);
  // Most formulas name cells of their own sheet alone, in which nothing may have changed.
  // A formula without a range that names none of a few changed rows looks at none of them.
  const rows = new Map<string, Set<string>>();
  for (const { sheet, row } of changed) rows.set(sheet, (rows.get(sheet) ?? new Set()).add(String(row + 1)));
  const mayLookAt = (sheet: string, formula: string) => {
    const few = rows.get(sheet);
    return few === undefined || few.size > 4 || formula.includes(":") || [...few].some((row) => formula.includes(row));
  };
  const looksElsewhere = (formula: string) => document.names.length > 0 || /[![]/.test(formula) || mayLookAnywhere(formula);
  return document.sheets.flatMap((sheet) =>
    [...sheet.cells].flatMap(([row, line]) =>
      [...line].flatMap(([column, { formula }]): Inputs[] => {
        if (formula === undefined || (!looksElsewhere(formula) && (!touched.has(sheet.id) || !mayLookAt(sheet.id, formula)))) return [];
        const cell = { sheet: sheet.id, row, column };
        return !isMeant(cell) ? [] : [{ ...cell, isKept: isKept(cell), ...reader.inputsOf(sheet, formula) }];
      }),
    ),
  );
}
