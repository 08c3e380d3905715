import { formulaTokens, isError, type CellPlace } from "../../sheet";
import type { DocumentCell, DocumentSheet, WorkbookDocument } from "./workbook-document";

/** Functions that may look at other cells than they name. */
const roamingFunctions: ReadonlySet<string> = new Set(["OFFSET", "INDIRECT", "CELL", "INFO"]);
const volatileFunctions: ReadonlySet<string> = new Set(["NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY", ...roamingFunctions]);

/** Tells whether a formula uses a function of ours. */
export function isOurs(formula: string): boolean {
  return /\bBAY\./i.test(formula) && formulaTokens(formula).some(({ kind, text }) => kind === "function" && /^BAY\./i.test(text));
}

/** Tells whether a formula may answer otherwise each time, or look at other cells than it names. */
export function isVolatile(formula: string): boolean {
  return callsOneOf(volatileFunctions, formula);
}

/** Tells whether a formula may look at other cells than it names: the clock and chance answer anew each time, and look at none. */
export function looksAnywhere(formula: string): boolean {
  return callsOneOf(roamingFunctions, formula);
}

const roamingCall = new RegExp(`(?:${[...roamingFunctions].join("|")})\\(`, "i");

/** Tells at a glance, without taking the formula apart, where it surely looks at no other cells than it names; true where that is not sure. */
export function mayLookAnywhere(formula: string): boolean {
  return roamingCall.test(formula);
}

function callsOneOf(functions: ReadonlySet<string>, formula: string): boolean {
  return formulaTokens(formula).some(({ kind, text }) => kind === "function" && functions.has(text.toUpperCase()));
}

/** Tells whether a formula is to be computed: one of ours, or one without a result. */
export function isToCompute({ hasResult }: DocumentCell, formula: string): boolean {
  return hasResult === false || isOurs(formula);
}

/** Tells whether a document holds anything that is to be computed. */
export function needsComputing(document: WorkbookDocument): boolean {
  return someFormula(document, isToCompute);
}

/** Tells whether a document holds a formula whose result nobody knows: one without any, or one of ours that the program that saved it did not know. */
export function lacksResults(document: WorkbookDocument): boolean {
  return someFormula(document, ({ hasResult, value }, formula) => hasResult === false || (isError(value) && value.error === "#NAME?" && isOurs(formula)));
}

/** Tells whether a formula of a sheet has no result. */
export function lacksResult(sheet: DocumentSheet): boolean {
  return someFormula({ sheets: [sheet] }, ({ hasResult }) => hasResult === false);
}

/** Lists the formulas without a result, each by the name of its sheet. */
export function* cellsWithoutResult({ sheets }: Pick<WorkbookDocument, "sheets">): Generator<CellPlace & { readonly sheet: string }> {
  for (const { name, cells } of sheets) {
    for (const [row, line] of cells) for (const [column, { formula, hasResult }] of line) if (formula !== undefined && hasResult === false) yield { sheet: name, row, column };
  }
}

function someFormula({ sheets }: Pick<WorkbookDocument, "sheets">, holds: (cell: DocumentCell, formula: string) => boolean): boolean {
  return sheets.some(({ cells }) => [...cells.values()].some((line) => [...line.values()].some((cell) => cell.formula !== undefined && holds(cell, cell.formula))));
}
