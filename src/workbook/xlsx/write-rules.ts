import { areaAddress, cellAddress, sheetDayOf, type Area } from "../../sheet";
import type { FormulaFormat, Look, TypingRule } from "../document/workbook-document";
import { toFileFormula } from "./formula-text";
import { readFormulaFormat } from "./read-rules";
import { childrenOf, escapeXml, numberOf, parseXml, splice, writeAttributes, type Splice } from "./xml";

/** Writes what may be typed where. */
export function writeTypingRules(prefix: string, rules: readonly TypingRule[]): string {
  if (rules.length === 0) return "";
  const written = rules.map((rule) => {
    const { type, operator, allowsBlank, hidesArrow, refuses, shows, weight, error, errorTitle, prompt, promptTitle } = rule;
    const attributes = {
      type,
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

/** The number of a day that is written out; whatever else stands there stays. 1900-01-01 is day 1 in every program. */
function dayOf(text: string): string {
  const iso = text.slice(0, 10);
  return iso === "1900-01-01" ? "1" : String(sheetDayOf(iso) ?? text);
}

/** Writes conditional formats, the first with the highest priority. */
export function writeFormats(prefix: string, formats: readonly FormulaFormat[], lookOf: (look: Look) => number): string {
  return formats
    .map(({ areas, formula, look }, index) => {
      const opening = `<${prefix}cfRule${writeAttributes({ type: "expression", dxfId: lookOf(look), priority: index + 1 })}>`;
      const rule = `${opening}<${prefix}formula>${escapeXml(toFileFormula(formula))}</${prefix}formula></${prefix}cfRule>`;
      return `<${prefix}conditionalFormatting sqref="${addresses(areas)}">${rule}</${prefix}conditionalFormatting>`;
    })
    .join("");
}

/** Takes the formats that a formula decides out of an element of a sheet; the others stay, behind so many that are written anew. */
export function withoutOurFormats(xml: string, prefix: string, newOnes: number): string {
  const element = parseXml(xml);
  const rules = childrenOf(element, "cfRule");
  const sqref = element.attributes["sqref"] ?? "";
  const isOurs = rules.map((rule) => readFormulaFormat({ attributes: rule.attributes, sqref, formulas: childrenOf(rule, "formula").map(({ text }) => text) }, []) !== null);
  if (isOurs.every(Boolean)) return "";
  return splice(xml, rules.map((rule, index): Splice => {
    if (isOurs[index] === true) return { start: rule.start, end: rule.end, text: "" };
    const priority = (numberOf(rule.attributes["priority"]) ?? 1) + newOnes;
    const opening = `<${prefix}cfRule${writeAttributes({ ...rule.attributes, priority })}`;
    return { start: rule.start, end: rule.inner, text: rule.inner === rule.end ? `${opening}/>` : `${opening}>` };
  }));
}

function addresses(areas: readonly Area[]): string {
  return areas.map((area) => (area.rows === 1 && area.columns === 1 ? cellAddress(area) : areaAddress(area))).join(" ");
}
