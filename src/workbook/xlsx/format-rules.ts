import type { IStyleBase } from "@univerjs/core";
import type { ConditionalFormattingOptions, ConditionalFormattingRule, Style, Worksheet } from "exceljs";
import type { IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";
import { areaAddress, cellAddress, parseAreas } from "../../sheet";
import { yes } from "../engine/engine-values";
import { formulaFormat, isFormulaFormat } from "../engine/formula-format";
import { toArea, toRange } from "../engine/stored-sheet";
import { argb, readStyle, type ReadColor } from "./cell-styles";
import { fromFileFormula, toFileFormula } from "./formula-text";
import { insideOf } from "./library-parts";

/** The conditional formats of a sheet: those that are a formula and a look, and the rest as it stood in the file. */
export interface FormatRules {
  readonly rules: readonly IConditionFormattingRule[];
  readonly others: readonly ConditionalFormattingOptions[];
}

/** Reads the conditional formats of a sheet. Comparisons become formulas that say the same; bars, scales and icons are carried along. */
export function readFormatRules(source: Worksheet, readColor: ReadColor): FormatRules {
  const others: ConditionalFormattingOptions[] = [];
  const found: { readonly priority: number; readonly rule: IConditionFormattingRule }[] = [];
  for (const { ref, rules } of insideOf(source).conditionalFormattings) {
    const areas = parseAreas(ref);
    for (const rule of rules) {
      const formula = areas[0] === undefined ? null : ruleFormula(rule, cellAddress(areas[0]));
      if (formula === null) {
        others.push({ ref, rules: [rule] });
        continue;
      }
      found.push({
        priority: rule.priority,
        rule: formulaFormat(`c${found.length}`, areas.map(toRange), fromFileFormula(formula), readLook(rule.style ?? {}, readColor)),
      });
    }
  }
  return { rules: found.sort((a, b) => a.priority - b.priority).map(({ rule }) => rule), others };
}

/** Writes the conditional formats of a sheet; what it had before goes. */
export function writeFormatRules(target: Worksheet, { rules, others }: FormatRules): void {
  const formats: ConditionalFormattingOptions[] = [];
  for (const { ranges, rule } of rules) {
    if (!isFormulaFormat(rule)) continue;
    formats.push({
      ref: ranges.map((range) => areaAddress(toArea(range))).join(" "),
      rules: [{ type: "expression", priority: formats.length + 1, formulae: [toFileFormula(rule.value)], style: writeLook(rule.style) }],
    });
  }
  for (const other of others) formats.push({ ref: other.ref, rules: other.rules.map((rule) => ({ ...rule, priority: formats.length + 1 })) });
  insideOf(target).conditionalFormattings = formats;
}

const comparisons: Readonly<Record<string, string>> = { equal: "=", notEqual: "<>", greaterThan: ">", lessThan: "<", greaterThanOrEqual: ">=", lessThanOrEqual: "<=" };

function ruleFormula(rule: ConditionalFormattingRule, cell: string): string | null {
  const formulae = (rule as { formulae?: unknown[] }).formulae?.map(String) ?? [];
  if (rule.type === "expression" || rule.type === "containsText") return formulae[0] ?? null;
  if (rule.type !== "cellIs" || formulae[0] === undefined) return null;
  const operator = String(rule.operator);
  if (operator === "between") return `AND(${cell}>=${formulae[0]},${cell}<=${formulae[1] ?? formulae[0]})`;
  if (operator === "notBetween") return `OR(${cell}<${formulae[0]},${cell}>${formulae[1] ?? formulae[0]})`;
  return comparisons[operator] === undefined ? null : `${cell}${comparisons[operator]}${formulae[0]}`;
}

// A conditional look keeps its fill in the colour that elsewhere is the pattern's background.
function readLook(style: Partial<Style>, readColor: ReadColor): IStyleBase {
  const fill = style.fill?.type === "pattern" ? (readColor(style.fill.bgColor) ?? readColor(style.fill.fgColor)) : undefined;
  const look = readStyle({ font: style.font }, readColor) as IStyleBase;
  return { ...look, ...(fill !== undefined && { bg: { rgb: fill } }) };
}

function writeLook({ bl, it, cl, bg }: IStyleBase): Partial<Style> {
  const font = { ...(bl === yes && { bold: true }), ...(it === yes && { italic: true }), ...(cl?.rgb && { color: { argb: argb(cl.rgb) } }) };
  return {
    ...(Object.keys(font).length > 0 && { font }),
    ...(bg?.rgb && { fill: { type: "pattern" as const, pattern: "solid" as const, bgColor: { argb: argb(bg.rgb) } } }),
  };
}
