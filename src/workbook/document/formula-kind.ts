import type { WorkbookDocument } from "./workbook-document";
import { formulaTokens } from "./formula-tokens";

const volatileFunctions: ReadonlySet<string> = new Set(["NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY", "OFFSET", "INDIRECT", "CELL", "INFO"]);

/** Tells whether a formula uses a function of ours. */
export function isOurs(formula: string): boolean {
  return /\bBAY\./i.test(formula) && formulaTokens(formula).some(({ kind, text }) => kind === "function" && /^BAY\./i.test(text));
}

/** Tells whether a formula may answer otherwise each time, or look at other cells than it names. */
export function isVolatile(formula: string): boolean {
  return formulaTokens(formula).some(({ kind, text }) => kind === "function" && volatileFunctions.has(text.toUpperCase()));
}

/** Tells whether a document holds anything that is to be computed: formulas of ours, and formulas without a result. */
export function needsComputing({ sheets }: WorkbookDocument): boolean {
  return sheets.some(({ cells }) => [...cells.values()].some((line) => [...line.values()].some(({ formula, hasResult }) => formula !== undefined && (hasResult === false || isOurs(formula)))));
}
