import { CellValueType, type ICellData, type Nullable, type Univer } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";
import { formulaTokens } from "../../sheet";

/**
 * Lets a formula that somebody types be computed in a cell for text too, which then is for text no more.
 *
 * The engine keeps it as text, in the colours that it had while it was typed. Most cells of the planning tables are for text, and who tries a formula there means a formula.
 * Words that only begin with an equals sign stay words.
 */
export function computeTypedFormulas(univer: Univer): void {
  const injector = univer.__getInjector();
  const lexer = injector.get(LexerTreeBuilder);
  const asMeant = (cell: Nullable<ICellData>): Nullable<ICellData> => {
    if (cell?.t !== CellValueType.STRING || typeof cell.v !== "string" || !isFormula(cell.v)) return cell;
    return { ...cell, f: cell.v + ")".repeat(lexer.checkIfAddBracket(cell.v)), v: null, t: null, p: null, s: { n: null } };
  };
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, { handler: (cell, _place, next) => next(asMeant(cell)) });
}

/** Tells whether a text is a formula: behind its sign stands a function, or cells. */
function isFormula(text: string): boolean {
  const [sign, first, next] = formulaTokens(text);
  if (sign === undefined || first === undefined || !/^=[\s(+-]*$/.test(sign.text)) return false;
  return ["function", "sheet", "cell", "line"].includes(first.kind) || (first.kind === "name" && next?.kind === "bracket");
}
