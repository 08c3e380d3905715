import type { Validation } from "../../sheet";

/** Sets what may be typed into cells. */
export function validate(target: Excel.DataValidation, { rule, message, strict }: Omit<Validation, "area">): void {
  target.rule = validationRule(rule);
  target.ignoreBlanks = true;
  target.errorAlert = { title: "Please check", message: message.slice(0, 255), showAlert: true, style: strict ? "Stop" : "Warning" };
}

function validationRule(rule: Validation["rule"]): Excel.DataValidationRule {
  switch (rule.kind) {
    case "list":
      return { list: { inCellDropDown: true, source: rule.items.join(",") } };
    case "list-of":
      return { list: { inCellDropDown: true, source: rule.formula } };
    case "date":
      return { date: { formula1: "1900-01-01", operator: "GreaterThanOrEqualTo" } };
    case "number":
      return { decimal: bounds(rule) };
    case "whole":
      return { wholeNumber: bounds(rule) };
  }
}

const extreme = 1e15;

function bounds({ least, most }: { readonly least?: number; readonly most?: number }): Excel.BasicDataValidation {
  return { formula1: least ?? -extreme, formula2: most ?? extreme, operator: "Between" };
}
