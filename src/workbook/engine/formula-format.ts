import type { IRange } from "@univerjs/core";
import type { CFRuleType, CFSubRuleType, IConditionFormattingRule, IFormulaHighlightCell } from "@univerjs/sheets-conditional-formatting";

// Two of the engine's enumerations by value: whoever reads a file must not load the plug-in for conditional formats, which brings a canvas.
/* eslint-disable @typescript-eslint/no-unsafe-enum-assignment */
const highlight = "highlightCell" as CFRuleType.highlightCell;
const byFormula = "formula" as CFSubRuleType.formula;
/* eslint-enable @typescript-eslint/no-unsafe-enum-assignment */

/** Makes a conditional format: cells of `ranges` take on the look where `formula`, written for the first cell, is true. */
export function formulaFormat(cfId: string, ranges: IRange[], formula: string, { bl, it, cl, bg }: IFormulaHighlightCell["style"]): IConditionFormattingRule {
  return { cfId, ranges, stopIfTrue: false, rule: { type: highlight, subType: byFormula, value: formula, style: { bl, it, cl, bg } } };
}

/** Tells whether a conditional format is one that a formula decides. */
export function isFormulaFormat(rule: IConditionFormattingRule["rule"]): rule is IFormulaHighlightCell {
  return rule.type === highlight && rule.subType === byFormula;
}
