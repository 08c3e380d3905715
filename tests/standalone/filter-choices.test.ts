import { choiceOf, choices, describeCondition, readValue, valueFault } from "../../src/standalone/filter-choices";
import type { FilterCondition } from "../../src/workbook/document/workbook-document";
import { testOf, type ShownCell } from "../../src/workbook/document/sheet-filter";

const cells = (...shown: readonly (readonly [ShownCell["value"], string])[]): ShownCell[] => shown.map(([value, text]) => ({ value, text }));
/** Day 46354 of a sheet is 2026-11-28, by hand: 45992 is 2025-12-01, and 362 days follow. */
const days = cells([46354, "2026-11-28"], [null, ""], [46360.25, "2026-12-04 06:00"]);
const shares = cells([0.05, "5%"], [0.5, "50%"], [1, "100%"]);
const dayTexts = cells(["2026-11-28", "2026-11-28"], ["2026-12-04", "2026-12-04"]);

/** The texts of the cells that a choice lets through once these values are written for it. */
function shown(choice: string, written: readonly string[], column: readonly ShownCell[]): string[] {
  const chosen = choices[choice]!;
  const [first = "", second = ""] = written.map((text) => readValue(text, chosen, column));
  return column.filter(testOf(chosen.condition(first, second))).map(({ text }) => text);
}

test.each([
  ["contains", ["0%"], shares, ["50%", "100%"]], ["begins", ["5"], shares, ["5%", "50%"]], ["ends", ["50%"], shares, ["50%"]], ["lacks", ["0%"], shares, ["5%"]],
  ["equal", ["50%"], shares, ["50%"]], ["greaterThan", ["20%"], shares, ["50%", "100%"]], ["between", ["5 %", "50%"], shares, ["5%", "50%"]],
  ["contains", ["2026-11-28"], days, ["2026-11-28"]], ["begins", ["2026-12"], days, ["2026-12-04 06:00"]], ["equal", ["2026-11-28"], days, ["2026-11-28"]],
  ["greaterThanOrEqual", ["2026-12-01"], days, ["2026-12-04 06:00"]], ["filled", [], days, ["2026-11-28", "2026-12-04 06:00"]], ["empty", [], days, [""]],
  ["equal", ["2026-11-28"], dayTexts, ["2026-11-28"]], ["greaterThanOrEqual", ["2026-12-01"], dayTexts, ["2026-12-04"]], ["equal", ["50%"], cells(["50%", "50%"], ["5", "5"]), ["50%"]],
  ["equal", ["1,200"], cells([1200, "1,200"], [12, "12"]), ["1,200"]], ["contains", ["1,2"], cells([1200, "1,200"], [12, "12"]), ["1,200"]],
  ["equal", ["007"], cells(["007", "007"], ["7", "7"]), ["007"]], ["lessThan", ["1e308"], cells([1e308, "1E+308"], [9e307, "9E+307"]), ["9E+307"]],
  ["contains", ["~*?"], cells(["a~*?b", "a~*?b"], ["a~xyb", "a~xyb"]), ["a~*?b"]], ["contains", ["<b>&\""], cells(["<b>&\"", "<b>&\""]), ["<b>&\""]],
] as const)("%s %j lets those cells of a column through that somebody means who sees it", (choice, written, column, expected) => {
  expect(shown(choice, written, column)).toEqual(expected);
});

test.each([
  ["greaterThan", "20%", shares, "20%"], ["equal", "2026-11-28", days, "2026-11-28"], ["between", "46354.5", days, "46354.5"], ["contains", "46354", days, "46354"], ["ends", "~", shares, "~"],
  ["contains", "a~~*", shares, "a~~*"], ["begins", "5", shares, "5"],
] as const)("%s %s is written in the same words when the card is opened again", (choice, written, column, expected) => {
  const value = readValue(written, choices[choice]!, column);
  expect(choiceOf(choices[choice]!.condition(value, value), column)).toEqual({ choice, values: Array.from({ length: choices[choice]!.asks }, () => expected) });
});

test("a column of numbers alone is compared with a number, any other with what is written", () => {
  const fault = (choice: string, written: string, column: readonly ShownCell[]) => valueFault(readValue(written, choices[choice]!, column), choices[choice]!, column);
  expect(fault("greaterThan", "28.11.2026", days)).toBe("The values here are numbers. Write one, such as 42, 20% or 2026-05-31.");
  expect(fault("greaterThan", " ", days)).toBe("Write what to compare with, such as 42 or a part of a name.");
  expect([
    fault("greaterThan", "2026-11-28", days), fault("equal", "28.11.2026", days), fault("greaterThan", "rail", [...days, ...dayTexts]), fault("greaterThan", "rail", []),
  ]).toEqual([null, null, null, null]);
});

describe("what a filter asks for is said in words", () => {
  const list = (texts: string[], blank = false): FilterCondition => ({ kind: "list", texts, blank });
  const compare = (joins: boolean, ...comparisons: Extract<FilterCondition, { kind: "compare" }>["comparisons"]): FilterCondition => ({ kind: "compare", joins, comparisons });

  test.each([
    [list(["metal"]), [], "is metal"], [list([], true), [], "is empty"], [list(["metal"], true), [], "is one of 2 values"], [list(["a", "b"]), [], "is one of 2 values"],
    [list(["x".repeat(32_000)]), [], `is ${"x".repeat(39)}…`], [compare(false, { operator: "equal", value: `*${"x".repeat(99)}*` }), [], `contains ${"x".repeat(39)}…`],
    [compare(true, { operator: "greaterThanOrEqual", value: "46354" }, { operator: "lessThanOrEqual", value: "46360" }), days, "is between 2026-11-28 and 2026-12-04"],
    [compare(false, { operator: "lessThan", value: "46354" }, { operator: "equal", value: "*-04" }), days, "is less than 2026-11-28 or ends with -04"],
    [compare(false, { operator: "lessThan", value: "0.07" }), shares, "is less than 7%"], [compare(false, { operator: "lessThan", value: "46354" }), shares.slice(0, 0), "is less than 46354"],
    [compare(false, { operator: "equal", value: "rail?" }), [], "is rail?"], [compare(false, { operator: "notEqual", value: " " }), [], "is not empty"],
    [compare(true, { operator: "equal", value: "" }), [], "is empty"],
    [{ kind: "other", xml: '<x:top10 val="3"/>' }, [], "goes by the highest or lowest values"], [{ kind: "other", xml: "<newKind/>" }, [], "goes by a rule of another program"],
  ] as [FilterCondition, ShownCell[], string][])("%j", (condition, column, sentence) => {
    expect(describeCondition(condition, column)).toBe(sentence);
  });
});
