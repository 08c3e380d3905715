import { formulaShifter, type Scalar } from "../../sheet";
import type { DocumentCell } from "../document/workbook-document";
import { fromFileFormula } from "./formula-text";

/** Says what a shared formula says so many rows and columns on from its first cell. */
export type FormulaAt = (rows: number, columns: number) => string;

/** Cells, and formulas, that are kept to be found again; what comes after them stands for itself. */
const mostKept = 100_000;

/** Longer texts are rarely the same. */
const longestKept = 500;

/** Cells of one formula and look that are told apart by what they show. */
const mostAlike = 16;

/**
 * Keeps one copy of cells that are alike, and of formulas: tabs of one workbook are mostly made of the same ones, and no cell is ever changed.
 *
 * A hundred tabs of three hundred steps hold 820,000 cells and 159,000 formulas, of which 1,800 differ.
 */
export class RepeatedCells {
  /** By look and by what stands in the cell: those that differ in what they show. */
  private readonly cells = new Map<number, Map<Scalar, DocumentCell[]>>();
  private readonly blanks: DocumentCell[] = [];
  private readonly formulas = new Map<string, FormulaAt>();
  private kept = 0;

  /** Answers with the one empty cell of a look. */
  blank(look: number): DocumentCell {
    return (this.blanks[look] ??= { value: null, look });
  }

  /** Finds the one copy of a cell; arrays, tables, links and texts in pieces stand for themselves. */
  cell(cell: DocumentCell): DocumentCell {
    const { value, formula, look, array, isDataTable, link, pieces } = cell;
    const content = formula ?? value;
    if (array !== undefined || isDataTable === true || link !== undefined || pieces !== undefined || (typeof content === "object" && content !== null)) return cell;
    if (typeof content === "string" && content.length > longestKept) return cell;
    let ofLook = this.cells.get(look);
    if (ofLook === undefined) this.cells.set(look, (ofLook = new Map<Scalar, DocumentCell[]>()));
    const alike = ofLook.get(content);
    if (alike === undefined) {
      if ((this.kept += 1) <= mostKept) ofLook.set(content, [cell]);
      return cell;
    }
    for (const one of alike) if (one.formula === formula && Object.is(one.value, value) && one.hasResult === cell.hasResult) return one;
    if (alike.length < mostAlike) alike.push(cell);
    return cell;
  }

  /** Prepares a shared formula of a file, taken apart once for all sheets. */
  formula(text: string): FormulaAt {
    const known = this.formulas.get(text);
    if (known !== undefined) return known;
    const shifted = formulaShifter(fromFileFormula(text));
    const places = new Map<number, string>();
    const formulaAt: FormulaAt = (rows, columns) => {
      const place = columns * 2_097_152 + rows;
      const made = places.get(place) ?? shifted(rows, columns);
      if ((this.kept += places.has(place) ? 0 : 1) <= mostKept) places.set(place, made);
      return made;
    };
    this.formulas.set(text, formulaAt);
    return formulaAt;
  }
}
