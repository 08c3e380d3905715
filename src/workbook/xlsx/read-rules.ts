import { instantOfDay, parseAreas } from "../../sheet";
import type { TypingRule } from "../document/workbook-document";
import { fromFileFormula } from "./formula-text";
import { isOn, numberOf, type Attributes } from "./xml";

/** A rule for typing as its element says it. */
export interface RawRule {
  readonly attributes: Attributes;
  sqref: string;
  readonly formulas: string[];
}

const types: readonly string[] = ["any", "list", "whole", "decimal", "date", "time", "textLength", "custom"] satisfies readonly TypingRule["type"][];

function isType(text: string | undefined): text is TypingRule["type"] {
  return text !== undefined && types.includes(text);
}

/** Reads what may be typed where; nothing where anything may. */
export function readTypingRule({ attributes, sqref, formulas }: RawRule): TypingRule[] {
  const { type: said = "none", errorStyle = "stop", operator, error, errorTitle, prompt, promptTitle } = attributes;
  const areas = parseAreas(sqref);
  const type = said === "none" ? "any" : said;
  if (!isType(type) || areas.length === 0) return [];
  return [
    {
      areas, type, error, errorTitle, prompt, promptTitle,
      // These two compare nothing; some programs write a comparison all the same.
      operator: type === "any" || type === "list" || type === "custom" ? undefined : operator,
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
  if (Number.isNaN(instant.getTime())) return text;
  const [date = "", time = ""] = instant.toISOString().split("T");
  return Number.isInteger(day) ? date : `${date} ${time.slice(0, 8)}`;
}
