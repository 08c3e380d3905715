import { DataValidationErrorStyle, DataValidationOperator, DataValidationRenderMode, type ISheetDataValidationRule } from "@univerjs/core";
import type { DataValidation, Worksheet } from "exceljs";
import { fromFileFormula, toFileFormula } from "./formula-text";
import { areaAddress, instantOfDay, parseAreas } from "../../sheet";
import { nameOf } from "../engine/engine-values";
import { toArea, toRange } from "../engine/stored-sheet";
import { insideOf } from "./library-parts";
import { element, elements, unescapeXml } from "./xml-scan";

const errorStyles = { information: DataValidationErrorStyle.INFO, stop: DataValidationErrorStyle.STOP, warning: DataValidationErrorStyle.WARNING } as const;
/** Comparisons by the names that files and the engine have in common. */
const operators: ReadonlyMap<string, DataValidationOperator> = new Map(Object.values(DataValidationOperator).map((one) => [one, one]));

/** Reads what may be typed where, out of the XML of a sheet: the file library takes rules apart cell by cell and loses formulas. */
export function readValidations(xml: string): ISheetDataValidationRule[] {
  return [...elements(xml, "dataValidation")].flatMap(({ attributes, inner }, index): ISheetDataValidationRule[] => {
    // Newer files may keep rules that look at other sheets in an extension, with the area inside.
    const ranges = parseAreas(attributes["sqref"] ?? unescapeXml(element(inner, "sqref")?.inner ?? "")).map(toRange);
    const type = attributes["type"];
    if (type === undefined || type === "none" || ranges.length === 0) return [];
    const [formula1, formula2] = ["formula1", "formula2"].map((name) => readFormula(element(inner, name)?.inner, type));
    return [
      {
        uid: `v${index}`,
        ranges,
        type,
        formula1,
        formula2,
        operator: operators.get(attributes["operator"] ?? "") ?? DataValidationOperator.BETWEEN,
        allowBlank: attributes["allowBlank"] === "1",
        showDropDown: type === "list" && attributes["showDropDown"] !== "1",
        // As spreadsheet programs show it: the text of the cell, and an arrow beside it.
        renderMode: DataValidationRenderMode.ARROW,
        showErrorMessage: attributes["showErrorMessage"] === "1",
        showInputMessage: attributes["showInputMessage"] === "1",
        error: attributes["error"],
        errorTitle: attributes["errorTitle"],
        errorStyle: readErrorStyle(attributes["errorStyle"]),
        prompt: attributes["prompt"],
        promptTitle: attributes["promptTitle"],
      },
    ];
  });
}

/** Writes rules into a sheet of a file, whose earlier rules go. */
export function writeValidations(target: Worksheet, rules: readonly ISheetDataValidationRule[]): void {
  // Not in the library's types: rules by area.
  const model: Record<string, DataValidation> = {};
  for (const rule of rules) {
    const type = rule.type === "listMultiple" ? "list" : rule.type;
    if (!["list", "whole", "decimal", "date", "time", "textLength", "custom"].includes(type)) continue;
    const formulae = [rule.formula1, rule.formula2].filter((formula) => formula !== undefined && formula !== "").map((formula) => writeFormula(formula!, type));
    for (const range of rule.ranges) {
      model[areaAddress(toArea(range))] = {
        type: type as DataValidation["type"],
        formulae,
        operator: rule.operator,
        allowBlank: rule.allowBlank ?? true,
        showErrorMessage: rule.showErrorMessage ?? true,
        showInputMessage: rule.showInputMessage ?? rule.prompt !== undefined,
        error: rule.error,
        errorTitle: rule.errorTitle,
        errorStyle: nameOf(errorStyles, rule.errorStyle ?? errorStyles.stop),
        prompt: rule.prompt,
        promptTitle: rule.promptTitle,
      };
    }
  }
  insideOf(target).dataValidations.model = model;
}

/** What a file does not name is refused; a name that we do not know only informs. */
function readErrorStyle(name = "stop"): DataValidationErrorStyle {
  return name === "stop" || name === "warning" ? errorStyles[name] : errorStyles.information;
}

function readFormula(inner: string | undefined, type: string): string | undefined {
  if (inner === undefined) return undefined;
  const text = unescapeXml(element(inner, "f")?.inner ?? inner);
  if (type === "list" && text.startsWith('"')) return text.slice(1, -1).replaceAll('""', '"');
  if (/^-?[\d.]+(e[+-]?\d+)?$/i.test(text)) return type === "date" ? dateText(Number(text)) : text;
  return fromFileFormula(text);
}

function writeFormula(formula: string, type: string): string | number | Date {
  if (formula.startsWith("=")) return toFileFormula(formula);
  if (type === "list") return `"${formula.replaceAll('"', '""')}"`;
  if (type === "date") return new Date(`${formula.slice(0, 10)}T00:00:00Z`);
  return Number.isFinite(Number(formula)) ? Number(formula) : formula;
}

function dateText(serial: number): string {
  return instantOfDay(serial).toISOString().slice(0, 10);
}
