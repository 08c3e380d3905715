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

describe("what was found of an address", () => {
  const six = { by: "address", canonical: "2001:db8::9", full: "2001:0db8:0000:0000:0000:0000:0000:0009" } as const;
  const four = { by: "address", canonical: "10.20.0.9", full: "10.20.0.9" } as const;
  test.each<[string, typeof six | typeof four, string, string]>([
    ["as expected in the form of RFC 5952", six, "2001:db8::9", "As expected"],
    ["as expected in capitals", six, "2001:DB8::9", "As expected"],
    ["as expected with all its digits (RFC 4291 section 2.2, form 1)", six, "2001:0DB8:0000:0000:0000:0000:0000:0009", "As expected"],
    ["left to the eye with its zeros written out (RFC 4291 section 2.2, form 1)", six, "2001:db8:0:0:0:0:0:9", "Compare by eye"],
    ["left to the eye with leading zeros", six, "2001:db8::0009", "Compare by eye"],
    ["left to the eye with a space", six, "2001:db8:: 9", "Compare by eye"],
    ["different of another one", six, "2001:db8::8", "Differs"],
    ["different of another one with all its digits", six, "2001:0db8:0000:0000:0000:0000:0000:0008", "Differs"],
    ["different of another one with one group of zeros", six, "2001:db8:0:1::9", "Differs"],
    ["as expected of IPv4", four, "10.20.0.9", "As expected"],
    ["left to the eye of octets with leading zeros", four, "10.20.0.09", "Compare by eye"],
    ["different of another IPv4 address", four, "10.20.0.8", "Differs"],
    ["different of another IPv4 address with two octets of zero", four, "10.0.0.9", "Differs"],
  ])("is %s", (_, wanted, found, result) => {
    expect(resultOf({ kind: "address", wanted, expected: wanted.canonical, typed: { found } })).toBe(result);
  });

  test("is as expected whatever it is where nothing is expected, and different where the tab expects something else than an address", () => {
    expect(resultOf({ kind: "address", wanted: null, typed: { found: "10.20.0.8" } })).toBe("As expected");
    expect(resultOf({ kind: "address", wanted: { by: "text", text: "10.20.0.8" }, typed: { found: "10.20.0.8" } })).toBe("Differs");
  });
});

describe("what was found where no figure is expected", () => {
  test.each<[string, Parameters<typeof stepRecord>[0], string]>([
    ["a size from 0 on", { kind: "size", seenUnit: "TB", typed: { found: 0 } }, "As expected"],
    ["no size below 0, by one byte", { kind: "size", seenUnit: "TB", typed: { found: -1e-12 } }, "Differs"],
    ["a size in a unit that is none", { kind: "size", seenUnit: "apples", typed: { found: 5 } }, "Compare by eye"],
    ["a size typed as text", { kind: "size", seenUnit: "TB", typed: { found: "5" } }, "Compare by eye"],
    ["a day of the sheet, counted from 1", { kind: "date", typed: { found: 1 } }, "As expected"],
    ["no day 0", { kind: "date", typed: { found: 0 } }, "Differs"],
    ["a day typed as text", { kind: "date", expected: "a date", typed: { found: "2 May" } }, "Compare by eye"],
  ])("is %s", (_, step, result) => {
    expect(resultOf({ wanted: null, ...step })).toBe(result);
  });

  test("a day is the expected one at whatever hour", () => {
    const day = { kind: "date", wanted: { by: "range", least: 46_000, most: 46_001 } } as const;
    expect([45_999.9, 46_000, 46_001.9, 46_002].map((found) => resultOf({ ...day, typed: { found } }))).toEqual(["Differs", "As expected", "As expected", "Differs"]);
  });

  const ticks = [[true, "As expected"], ["Yes", "As expected"], ["x", "As expected"], ["true", "As expected"], [false, "Differs"], ["No", "Differs"]] as const;

  test.each(ticks)("a box ticked with %p is %s", (found, result) => {
    expect(resultOf({ kind: "tick", wanted: null, typed: { found } })).toBe(result);
  });
});

test("nothing is said of a step while nothing was typed", () => {
  expect(answersOf(stepRecord({ kind: "tick", wanted: null }), [])).toEqual({ result: "", compares: "", retest: "", retestCompares: "", settled: 0 });
});

describe("a snag hands on nothing", () => {
  test.each<[string, Snag]>([
    ["while it is open", about({ foundAgain: 5 })],
    ["where it is closed and nothing was found again", about({ closed: "Closed" })],
    ["where what was found again is an error", about({ foundAgain: "#REF!", closed: "Closed" }, { errors: ["foundAgain"] })],
    ["where the word that closes it is an error", about({ foundAgain: 5, closed: "#REF!" }, { errors: ["closed"] })],
    ["where nobody has accepted it by name", about({ closed: "Accepted" })],
  ])("%s", (_, snag) => {
    expect(snagAnswersOf(snag, { snags: [snag], steps: [stepRecord()] }).retest).toBe("");
  });
});
