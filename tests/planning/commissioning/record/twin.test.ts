import { answersOf, snagAnswersOf, type Snag, type StepRecord } from "../../../../src/planning/commissioning/record";
import { snagOf, stepRecord } from "../../../support/job-records";

const range = { by: "range", least: 46, most: 50 } as const;
const number = { kind: "number", expected: "48 ±2", wanted: range } as const;
const about = (more: Partial<Snag["typed"]>, rest: Partial<Snag> = {}): Snag => snagOf({ ...rest, typed: { about: 1, ...more } });
const resultOf = (step: Parameters<typeof stepRecord>[0], ...snags: Snag[]): string => answersOf(stepRecord(step), snags).result;

describe("what Result must be", () => {
  test.each<[string, Parameters<typeof stepRecord>[0], string]>([
    ["blank while nothing was typed", { ...number }, ""],
    ["as expected of a number within its bounds", { ...number, typed: { found: 46 } }, "As expected"],
    ["different of one beyond", { ...number, typed: { found: 50.1 } }, "Differs"],
    ["as expected of nought where nought is expected", { kind: "number", wanted: { by: "range", least: 0, most: 0 }, typed: { found: 0 } }, "As expected"],
    ["left to the eye of digits typed as text", { ...number, typed: { found: "48" } }, "Compare by eye"],
    ["as expected of text that is what is shown, letter by letter", { ...number, expected: "48", typed: { found: "48" } }, "As expected"],
    ["left to the eye of full-width digits", { ...number, expected: "48", typed: { found: "４８" } }, "Compare by eye"],
    ["left to the eye of a text with another space", { kind: "serial", wanted: { by: "text", text: "N-1" }, typed: { found: "N-1\u00a0" } }, "Compare by eye"],
    ["different of a lone surrogate", { kind: "serial", wanted: { by: "text", text: "N-1" }, typed: { found: "\ud800" } }, "Differs"],
    ["different of a text with a wildcard", { kind: "serial", wanted: { by: "text", text: "N-1" }, typed: { found: "N*" } }, "Differs"],
    ["different where a cell beside it shows an error", { ...number, typed: { found: 48, by: "#REF!" }, errors: ["by"] }, "Differs"],
    ["to be seen again of an old expectation", { ...number, expectedBefore: "40", typed: { found: 48 } }, "Check again"],
    ["as expected once it was seen again", { ...number, expectedBefore: "40", typed: { found: 48, recheckedBy: "CD" } }, "As expected"],
    ["in want of a second name that is another one", { ...number, sign: "two", typed: { found: 48, by: "AB", witness: "a b" } }, "Needs a second name"],
    ["set aside in whatever capitals", { ...number, typed: { found: "waived" } }, "Waived"],
  ])("is %s", (_, step, result) => {
    expect(resultOf(step)).toBe(result);
  });

  test("follows from the last snag about the step, once that is closed or accepted by name", () => {
    const found = { kind: "serial", wanted: { by: "text", text: "N-1" }, typed: { found: "X" } } as const;
    expect(resultOf(found, about({ foundAgain: "N-1" }))).toBe("Differs");
    expect(resultOf(found, about({ foundAgain: "N-1", closed: "Closed" }))).toBe("As expected");
    expect(resultOf(found, about({ foundAgain: "N-1", closed: "Closed" }), about({}))).toBe("Differs");
    expect(resultOf(found, about({ closed: "Accepted" }))).toBe("Differs");
    expect(resultOf(found, about({ closed: "Accepted", by: "EF" }))).toBe("Waived");
    expect(resultOf(found, about({ about: "1", closed: "Accepted", by: "EF" }))).toBe("Differs");
  });
});

describe("a step is settled", () => {
  test.each<[string, Partial<StepRecord["typed"]>, 0 | 1]>([
    ["once it is as expected and signed", { found: 48, by: "AB" }, 1],
    ["not while nobody has signed", { found: 48, by: null }, 0],
    ["once it is waived with name and reason", { found: "Waived", by: "AB", note: "later" }, 1],
    ["not while a waiver has no reason", { found: "Waived", by: "AB" }, 0],
    ["not while it differs", { found: 1, by: "AB", note: "n" }, 0],
  ])("%s", (_, typed, settled) => {
    expect(answersOf(stepRecord({ ...number, typed }), []).settled).toBe(settled);
  });
});

describe("the answers of a snag", () => {
  test("say which step it is about, whether it is the last one, what it hands on and whether it is open", () => {
    const [first, last] = [about({ foundAgain: "5", closed: "Closed" }, { row: 20 }), about({ closed: "Accepted", by: "EF" }, { row: 21 })];
    const tab = { snags: [first, last], steps: [stepRecord()] };
    expect(snagAnswersOf(first, tab)).toEqual({ stepId: "S-1", key: "J1/S-1/A1", place: "1", retest: "5", isOpen: 1 });
    expect(snagAnswersOf(last, tab)).toEqual({ stepId: "S-1", key: "J1/S-1/A1", place: "1#1", retest: "~accepted", isOpen: 0 });
    expect(snagAnswersOf(about({ about: 9 }), tab)).toMatchObject({ stepId: "", key: "", place: "9#1" });
  });
});
