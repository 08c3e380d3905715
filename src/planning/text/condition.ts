import { foldName } from "./fold-name";
import { isPlainNumber } from "./number-text";
import { invalid, quote } from "./problem";
import type { Lookup } from "./template";

const operators = ["<>", "=", ">", "<"] as const;

/** One comparison of a When: what the field must be, or must not be, without case; or the number that it must be above or below. */
export interface Comparison {
  readonly field: string;
  readonly operator: (typeof operators)[number];
  /** Of several the field is, or is not, one; behind > and < a single number. */
  readonly values: readonly string[];
}

/**
 * Reads a When: blank, or comparisons joined by `and`: `field = a|b`, `field <> a|b`, `field > 2`, `field < 2`. An empty value asks for a blank field.
 *
 * Signs in a row, as in => and ==, are refused: read as a value they would let a step disappear.
 */
export function parseCondition(text: string, argument: string): readonly Comparison[] {
  if (text.trim() === "") return [];
  return text.split(/\s+and\s+/i).map((part): Comparison => {
    const [, before = "", sign, behind = ""] = /^([^<>=]*)(<>|[=<>])(?!\s*[<>=])(.*)$/s.exec(part) ?? [];
    const [field, operator] = [before.trim(), operators.find((one) => one === sign)];
    if (field === "" || operator === undefined) {
      throw invalid(argument, text, `${argument} ${quote(text)} is no condition. Write field = value, joined by and, such as Cluster act = join.`);
    }
    const isBound = operator === ">" || operator === "<";
    const values = isBound ? [behind.trim()] : behind.split("|").map((value) => value.trim());
    if (isBound && !isPlainNumber(values[0]!)) throw invalid(argument, text, `${argument} ${quote(text)} compares with no number. Write digits behind ${operator}, such as ${field} ${operator} 2.`);
    return { field, operator, values };
  });
}

/** Tells whether every comparison of a condition holds. A field that is no number is neither above nor below one. */
export function conditionHolds(condition: readonly Comparison[], lookup: Lookup): boolean {
  return condition.every(({ field, operator, values }) => {
    const found = lookup(field).trim();
    if (operator === ">" || operator === "<") {
      const [number, bound] = [isPlainNumber(found) ? Number(found) : NaN, Number(values[0])];
      return operator === ">" ? number > bound : number < bound;
    }
    return values.some((value) => foldName(value) === foldName(found)) === (operator === "=");
  });
}
