import { foldName } from "./fold-name";
import { invalid, quote } from "./problem";
import type { Lookup } from "./template";

/** One comparison of a When: the field must hold the value, without case. */
export interface Comparison {
  readonly field: string;
  readonly value: string;
}

/** Reads a When: blank, or `field = value` joined by `and`. An empty value asks for a blank field. */
export function parseCondition(text: string, argument: string): readonly Comparison[] {
  if (text.trim() === "") return [];
  return text.split(/\s+and\s+/i).map((part) => {
    const equals = part.indexOf("=");
    const field = part.slice(0, Math.max(equals, 0)).trim();
    if (field === "") throw invalid(argument, text, `${argument} ${quote(text)} is no condition. Write field = value, joined by and, such as Cluster act = join.`);
    return { field, value: part.slice(equals + 1).trim() };
  });
}

/** Tells whether every comparison of a condition holds. */
export function conditionHolds(condition: readonly Comparison[], lookup: Lookup): boolean {
  return condition.every(({ field, value }) => foldName(lookup(field)) === foldName(value));
}
