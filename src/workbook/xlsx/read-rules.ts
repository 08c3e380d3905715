import { cellAddress, instantOfDay, parseAreas } from "../../sheet";
import type { FormulaFormat, Look, TypingRule } from "../document/workbook-document";
import { fromFileFormula } from "./formula-text";
import { isOn, numberOf, type Attributes } from "./xml";

/** A rule for typing as its element says it. */
export interface RawRule {
  readonly attributes: Attributes;
  sqref: string;
  readonly formulas: string[];
}

/** A conditional format as its element says it. */
export interface RawFormat {
  readonly attributes: Attributes;
  readonly sqref: string;
  readonly formulas: string[];
}

const types: readonly string[] = ["list", "whole", "decimal", "date", "time", "textLength", "custom"] satisfies readonly TypingRule["type"][];

function isType(text: string | undefined): text is TypingRule["type"] {
  return text !== undefined && types.includes(text);
}

/** Reads what may be typed where; nothing where anything may. */
export function readTypingRule({ attributes, sqref, formulas }: RawRule): TypingRule[] {
  const { type, errorStyle = "stop", operator, error, errorTitle, prompt, promptTitle } = attributes;
  const areas = parseAreas(sqref);
  if (!isType(type) || areas.length === 0) return [];
  return [
    {
      areas, type, error, errorTitle, prompt, promptTitle,
      // These two compare nothing; some programs write a comparison all the same.
      operator: type === "list" || type === "custom" ? undefined : operator,
      formulas: formulas.map((formula) => readRuleFormula(formula, type)),
      allowsBlank: isOn(attributes["allowBlank"]),
      hidesArrow: isOn(attributes["showDropDown"]) || undefined,
      refuses: isOn(attributes["showErrorMessage"]),
      shows: isOn(attributes["showInputMessage"]),
      weight: errorStyle === "stop" || errorStyle === "warning" ? errorStyle : "information",
    },
  ];
}

function readRuleFormula(text: string, type: TypingRule["type"]): string {
  if (type === "list" && text.startsWith('"')) return text.slice(1, -1).replaceAll('""', '"');
  const number = numberOf(text);
  if (number === undefined) return fromFileFormula(text);
  return type === "date" ? dayText(number, text) : text;
}

function dayText(day: number, text: string): string {
  const instant = instantOfDay(day);
  return Number.isNaN(instant.getTime()) ? text : instant.toISOString().slice(0, 10);
}

const comparisons: Readonly<Record<string, string>> = { equal: "=", notEqual: "<>", greaterThan: ">", lessThan: "<", greaterThanOrEqual: ">=", lessThanOrEqual: "<=" };

/** Reads a conditional format that a formula decides, a comparison as the formula that says the same; null for bars, scales, icons and the like. */
export function readFormulaFormat({ attributes, sqref, formulas }: RawFormat, looks: readonly Look[]): FormulaFormat | null {
  const areas = parseAreas(sqref);
  const formula = areas[0] === undefined ? null : ruleFormula(attributes, formulas, cellAddress(areas[0]));
  if (formula === null) return null;
  const { bold, italic, color, fill } = looks[Number(attributes["dxfId"])] ?? {};
  return { areas, formula: fromFileFormula(formula), look: { bold, italic, color, fill } };
}

function ruleFormula({ type, operator = "" }: Attributes, formulas: readonly string[], cell: string): string | null {
  const [first, second] = formulas;
  if (first === undefined) return null;
  if (type === "expression" || type === "containsText") return first;
  if (type !== "cellIs") return null;
  if (operator === "between") return `AND(${cell}>=${first},${cell}<=${second ?? first})`;
  if (operator === "notBetween") return `OR(${cell}<${first},${cell}>${second ?? first})`;
  return comparisons[operator] === undefined ? null : `${cell}${comparisons[operator]}${first}`;
}
