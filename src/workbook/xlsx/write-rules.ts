import { areaAddress, cellAddress, sheetDayOf, type Area } from "../../sheet";
import type { TypingRule } from "../document/workbook-document";
import { toFileFormula } from "./formula-text";
import { escapeXml, writeAttributes } from "./xml";

/** Writes what may be typed where. */
export function writeTypingRules(prefix: string, rules: readonly TypingRule[]): string {
  if (rules.length === 0) return "";
  const written = rules.map((rule) => {
    const { type, operator, allowsBlank, hidesArrow, refuses, shows, weight, error, errorTitle, prompt, promptTitle } = rule;
    const attributes = {
      type: type === "any" ? undefined : type,
      operator: operator === undefined || operator === "between" ? undefined : operator,
      errorStyle: weight,
      allowBlank: allowsBlank ? 1 : undefined,
      showDropDown: hidesArrow === true ? 1 : undefined,
      showInputMessage: shows ? 1 : undefined,
      showErrorMessage: refuses ? 1 : undefined,
      error, errorTitle, prompt, promptTitle,
      sqref: addresses(rule.areas),
    };
    const formulas = rule.formulas.slice(0, 2).map((formula, index) => `<${prefix}formula${index + 1}>${escapeXml(ruleFormula(formula, type))}</${prefix}formula${index + 1}>`);
    return `<${prefix}dataValidation${writeAttributes(attributes)}>${formulas.join("")}</${prefix}dataValidation>`;
  });
  return `<${prefix}dataValidations count="${rules.length}">${written.join("")}</${prefix}dataValidations>`;
}

function ruleFormula(formula: string, type: TypingRule["type"]): string {
  if (formula.startsWith("=")) return toFileFormula(formula);
  if (type === "list") return `"${formula.replaceAll('"', '""')}"`;
  if (type === "date") return dayOf(formula);
  return formula;
}

/** The number of a day, and of a time behind it, that is written out; whatever else stands there stays. 1900-01-01 is day 1 in every program. */
function dayOf(text: string): string {
  const iso = text.slice(0, 10);
  const day = iso === "1900-01-01" ? 1 : sheetDayOf(iso);
  const [, hours, minutes, seconds = "0"] = /^ (\d{1,2}):(\d{2})(?::(\d{2}))?$/.exec(text.slice(10)) ?? [];
  return day === null ? text : String(day + (hours === undefined ? 0 : (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86_400));
}

/** Writes areas as elements of a sheet name them. */
export function addresses(areas: readonly Area[]): string {
  return areas.map((area) => (area.rows === 1 && area.columns === 1 ? cellAddress(area) : areaAddress(area))).join(" ");
}
