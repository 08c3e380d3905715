import { cutText } from "../planning/text";
import { isIsoDate, isoDateOf, sheetDayOf } from "../sheet";
import { isEmpty, literally, type ShownCell } from "../workbook/document/sheet-filter";
import type { Comparison, FilterCondition } from "../workbook/document/workbook-document";

/** A way of comparing. */
export interface Choice {
  readonly label: string;
  /** How many values it asks for. */
  readonly asks: 0 | 1 | 2;
  /** What of a cell it looks at: the letters that it shows, the value behind them, or how great that is. */
  readonly by: "letters" | "value" | "size";
  readonly condition: (first: string, second: string) => FilterCondition;
}

const one = (operator: Comparison["operator"], value: string): FilterCondition => ({ kind: "compare", joins: false, comparisons: [{ operator, value }] });

/** The ways of comparing by the names that the menu of a filter has for them. */
export const choices: Readonly<Record<string, Choice>> = {
  contains: { label: "contains", asks: 1, by: "letters", condition: (text) => one("equal", `*${literally(text)}*`) },
  lacks: { label: "does not contain", asks: 1, by: "letters", condition: (text) => one("notEqual", `*${literally(text)}*`) },
  begins: { label: "begins with", asks: 1, by: "letters", condition: (text) => one("equal", `${literally(text)}*`) },
  ends: { label: "ends with", asks: 1, by: "letters", condition: (text) => one("equal", `*${literally(text)}`) },
  equal: { label: "is", asks: 1, by: "value", condition: (text) => one("equal", literally(text)) },
  notEqual: { label: "is not", asks: 1, by: "value", condition: (text) => one("notEqual", literally(text)) },
  greaterThan: { label: "is greater than", asks: 1, by: "size", condition: (text) => one("greaterThan", text) },
  greaterThanOrEqual: { label: "is at least", asks: 1, by: "size", condition: (text) => one("greaterThanOrEqual", text) },
  lessThan: { label: "is less than", asks: 1, by: "size", condition: (text) => one("lessThan", text) },
  lessThanOrEqual: { label: "is at most", asks: 1, by: "size", condition: (text) => one("lessThanOrEqual", text) },
  between: {
    label: "is between",
    asks: 2,
    by: "size",
    condition: (least, most) => ({ kind: "compare", joins: true, comparisons: [{ operator: "greaterThanOrEqual", value: least }, { operator: "lessThanOrEqual", value: most }] }),
  },
  empty: { label: "is empty", asks: 0, by: "letters", condition: () => ({ kind: "list", texts: [], blank: true }) },
  filled: { label: "is not empty", asks: 0, by: "letters", condition: () => one("notEqual", " ") },
};

/** A choice with the values that were written for it. */
export interface Chosen {
  readonly choice: string;
  readonly values: readonly string[];
}

/** Finds the choice by which a condition could have been made in a column with these cells; null where there is none, as for most that other programs wrote. */
export function choiceOf(condition: FilterCondition | undefined, cells: Iterable<ShownCell>): Chosen | null {
  if (condition === undefined || condition.kind === "other") return null;
  const [only, ...others] = condition.kind === "compare" ? condition.comparisons : [];
  // Programs write it in two ways that a cell is empty.
  if (only?.value.trim() === "" && others.length === 0 && !/than/i.test(only.operator)) return { choice: only.operator === "equal" ? "empty" : "filled", values: [] };
  const wanted = JSON.stringify(condition);
  const written = condition.kind === "list" ? [] : condition.comparisons.map(({ value }) => value);
  const plain = (written[0] ?? "").replace(/^\*|(?<!(?<!~)(?:~~)*~)\*$/g, "").replace(/~([*?~])/g, "$1");
  for (const [name, choice] of Object.entries(choices)) {
    for (const values of [written, [plain]]) {
      const [first = "", second = ""] = values;
      if (JSON.stringify(choice.condition(first, second)) === wanted) return { choice: name, values: values.slice(0, choice.asks).map((value) => showValue(value, choice, cells)) };
    }
  }
  return null;
}

/** Turns what somebody wrote into what a comparison holds: where numbers are compared, dates and shares as the numbers that they are. */
export function readValue(text: string, { by }: Choice, cells: readonly ShownCell[]): string {
  const plain = text.trim();
  if (by === "letters" || !cells.some(({ value }) => typeof value === "number")) return plain;
  const day = sheetDayOf(plain);
  if (day !== null) return String(day);
  if (/^-?\d+(\.\d+)?\s*%$/.test(plain)) return String(Number((Number.parseFloat(plain) / 100).toPrecision(15)));
  return /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(plain) ? plain.replaceAll(",", "") : plain;
}

/** Says what keeps a value from being compared with these cells; null where nothing does. */
export function valueFault(value: string, { by }: Choice, cells: readonly ShownCell[]): string | null {
  if (value === "") return "Write what to compare with, such as 42 or a part of a name.";
  const filled = cells.filter(({ text }) => !isEmpty(text));
  const isApart = by === "size" && !isNumber(value) && filled.length > 0 && filled.every(({ value: one }) => typeof one === "number");
  return isApart ? "The values here are numbers. Write one, such as 42, 20% or 2026-05-31." : null;
}

function isNumber(value: string): boolean {
  return value.trim() !== "" && !Number.isNaN(Number(value));
}

/** Turns the value of a comparison into what somebody would write in a column like this one; the first of its numbers tells how they are shown. */
function showValue(value: string, { by }: Choice, cells: Iterable<ShownCell>): string {
  if (by === "letters" || !isNumber(value)) return value;
  const number = Number(value);
  const text = firstNumber(cells);
  if (isIsoDate(text.slice(0, 10)) && Number.isInteger(number)) return isoDateOf(number) ?? value;
  return text.endsWith("%") ? `${Number((number * 100).toPrecision(15))}%` : value;
}

function firstNumber(cells: Iterable<ShownCell>): string {
  for (const { value, text } of cells) if (typeof value === "number") return text;
  return "";
}

/** Says what a condition asks for, in the words of a column with these cells. */
export function describeCondition(condition: FilterCondition, cells: Iterable<ShownCell>): string {
  if (condition.kind === "list") {
    const { texts, blank } = condition;
    const [first = "empty", ...others] = texts;
    return others.length === 0 && !(blank && texts.length > 0) ? `is ${cutText(first)}` : `is one of ${texts.length + (blank ? 1 : 0)} values`;
  }
  if (condition.kind === "compare") {
    const { joins, comparisons } = condition;
    const chosen = choiceOf(condition, cells) ?? (comparisons.length === 1 ? { choice: comparisons[0]!.operator, values: [comparisons[0]!.value] } : null);
    if (chosen !== null) return `${choices[chosen.choice]!.label} ${chosen.values.map((value) => cutText(value)).join(" and ")}`.trim();
    return comparisons.map((one) => describeCondition({ kind: "compare", joins: false, comparisons: [one] }, cells)).join(joins ? " and " : " or ");
  }
  const kind = /^\s*<(?:[\w-]+:)?(\w+)/.exec(condition.xml)?.[1] ?? "";
  return `goes by ${otherKinds[kind] ?? "a rule of another program"}`;
}

const otherKinds: Readonly<Record<string, string>> = {
  filters: "groups of days", colorFilter: "a colour", iconFilter: "an icon", dynamicFilter: "what moves with the day or the average", top10: "the highest or lowest values",
};
