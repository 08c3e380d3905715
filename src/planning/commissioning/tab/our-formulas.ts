import { recordKinds, signs } from "../../plan/schema";
import { slotColumns } from "./tab-columns";
import { gridFormulas, progressFormulas, snagFormulas, stepFormulas, type FormulaSlot } from "./tab-formulas";

/** Lists the functions of a formula in their order: what is left of it where another program has written it in its own way. */
function functionsOf(formula: string): string {
  return (formula.toUpperCase().replace(/"[^"]*"/g, "").match(/[A-Z][A-Z0-9.]*(?=\()/g) ?? []).join(" ");
}

const anywhere = { first: 0, last: 0 };
const compared = [null, { by: "text", text: "" }] as const;

function formulasOfGrid(expectation: FormulaSlot["expectation"], width: number): string[] {
  return Object.values(gridFormulas(0, slotColumns.slice(0, width).map((columns) => ({ expectation, name: "", columns }))));
}

/** The functions of every formula that a build writes. */
const ours: ReadonlySet<string> = new Set(
  [
    ...recordKinds.flatMap((kind) => compared.flatMap((wanted) => signs.flatMap((sign) => Object.values(stepFormulas(0, { kind, wanted, shown: "", choices: [] }, sign, anywhere))))),
    ...recordKinds.flatMap((kind) => compared.flatMap((wanted) => slotColumns.flatMap((_, last) => formulasOfGrid({ kind, wanted }, last + 1)))),
    ...Object.values(snagFormulas(0, anywhere, anywhere)),
    ...Object.values(progressFormulas(anywhere, anywhere, 0)),
  ].map(functionsOf),
);

/** Tells whether a formula is one that a build writes, whatever it shows: it may not have been computed since something was typed. */
export function isOurFormula(formula: string): boolean {
  return ours.has(functionsOf(formula));
}
