import { isIsoDate, isoDateOf, sheetDayOf } from "../sheet";
import { literally, type ShownCell } from "../workbook/document/sheet-filter";
import type { Comparison, FilterCondition } from "../workbook/document/workbook-document";

/** How many values a way of comparing asks for. */
export interface Choice {
  readonly label: string;
  readonly asks: 0 | 1 | 2;
  readonly condition: (first: string, second: string) => FilterCondition;
}

const one = (operator: Comparison["operator"], value: string): FilterCondition => ({ kind: "compare", joins: false, comparisons: [{ operator, value }] });

/** The ways of comparing by the names that the menu of a filter has for them. */
export const choices: Readonly<Record<string, Choice>> = {
  contains: { label: "contains", asks: 1, condition: (text) => one("equal", `*${literally(text)}*`) },
  lacks: { label: "does not contain", asks: 1, condition: (text) => one("notEqual", `*${literally(text)}*`) },
  begins: { label: "begins with", asks: 1, condition: (text) => one("equal", `${literally(text)}*`) },
  ends: { label: "ends with", asks: 1, condition: (text) => one("equal", `*${literally(text)}`) },
  equal: { label: "is", asks: 1, condition: (text) => one("equal", literally(text)) },
  notEqual: { label: "is not", asks: 1, condition: (text) => one("notEqual", literally(text)) },
  greaterThan: { label: "is greater than", asks: 1, condition: (text) => one("greaterThan", text) },
  greaterThanOrEqual: { label: "is at least", asks: 1, condition: (text) => one("greaterThanOrEqual", text) },
  lessThan: { label: "is less than", asks: 1, condition: (text) => one("lessThan", text) },
  lessThanOrEqual: { label: "is at most", asks: 1, condition: (text) => one("lessThanOrEqual", text) },
  between: {
    label: "is between",
    asks: 2,
    condition: (least, most) => ({ kind: "compare", joins: true, comparisons: [{ operator: "greaterThanOrEqual", value: least }, { operator: "lessThanOrEqual", value: most }] }),
  },
  empty: { label: "is empty", asks: 0, condition: () => ({ kind: "list", texts: [], blank: true }) },
  filled: { label: "is not empty", asks: 0, condition: () => one("notEqual", " ") },
};

/** A choice with the values that were written for it. */
export interface Chosen {
  readonly choice: string;
  readonly values: readonly string[];
}

/** Finds the choice by which a condition could have been made; null where there is none, as for most that other programs wrote. */
export function choiceOf(condition: FilterCondition | undefined): Chosen | null {
  if (condition === undefined || condition.kind === "other") return null;
  const wanted = JSON.stringify(condition);
  const written = condition.kind === "list" ? [] : condition.comparisons.map(({ value }) => value);
  const plain = (written[0] ?? "").replace(/^\*|(?<!~)\*$/g, "").replace(/~([*?~])/g, "$1");
  for (const [choice, { asks, condition: make }] of Object.entries(choices)) {
    for (const values of [written, [plain]]) {
      const [first = "", second = ""] = values;
      if (JSON.stringify(make(first, second)) === wanted) return { choice, values: values.slice(0, asks) };
    }
  }
  return null;
}

/** Turns what somebody wrote into what a comparison holds: dates and shares as the numbers that they are. */
export function readValue(text: string): string {
  const plain = text.trim();
  const day = sheetDayOf(plain);
  if (day !== null) return String(day);
  if (/^-?\d+(\.\d+)?\s*%$/.test(plain)) return String(Number((Number.parseFloat(plain) / 100).toPrecision(15)));
  return /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(plain) ? plain.replaceAll(",", "") : plain;
}

/** Turns the value of a comparison into what somebody would write in a column like this one. */
export function showValue(value: string, cells: readonly ShownCell[]): string {
  const holdsDays = cells.some(({ value: day, text }) => typeof day === "number" && isIsoDate(text.slice(0, 10)));
  return (holdsDays ? isoDateOf(Number(value)) : null) ?? value;
}

/** Says what a condition asks for. */
export function describeCondition(condition: FilterCondition): string {
  if (condition.kind === "list") {
    const { texts, blank } = condition;
    const [first = "empty", ...others] = texts;
    return others.length === 0 && !(blank && texts.length > 0) ? `is ${first}` : `is one of ${texts.length + (blank ? 1 : 0)} values`;
  }
  if (condition.kind === "compare") {
    const words = condition.comparisons.map((comparison) => {
      const { choice, values } = choiceOf({ kind: "compare", joins: false, comparisons: [comparison] }) ?? { choice: comparison.operator, values: [comparison.value] };
      return `${choices[choice]!.label} ${values.join(" ")}`.trim();
    });
    return words.join(condition.joins ? " and " : " or ");
  }
  const kind = /^\s*<(?:[\w-]+:)?(\w+)/.exec(condition.xml)?.[1] ?? "";
  return `goes by ${otherKinds[kind] ?? "a rule of another program"}`;
}

const otherKinds: Readonly<Record<string, string>> = {
  filters: "groups of days", colorFilter: "a colour", iconFilter: "an icon", dynamicFilter: "what moves with the day or the average", top10: "the highest or lowest values",
};
