import { Problem } from "../../src/planning/text";
import { readAnswer } from "../../src/step/answer";

describe("what is typed on a phone", () => {
  test.each([
    ["number", " 8972 ", 8972], ["number", "-0.5", -0.5], ["size", "15.9", 15.9], ["date", "2026-05-31", 46_173],
    ["serial", "00471", "00471"], ["address", "192.0.2.1", "192.0.2.1"], ["text", "=1+1", "=1+1"], ["tick", "Yes", "Yes"],
    ["number", "Not applicable", "Not applicable"], ["date", "Waived", "Waived"],
  ] as const)("as a %s, %j, goes into its cell as %j", (kind, text, value) => {
    expect(readAnswer(kind, text)).toBe(value);
  });

  test.each([
    ["number", "3,84", 'Found "3,84" has a comma. Write 3.84.'],
    ["number", "1,200", 'Found "1,200" has a comma: is it 1.2 or 1200? Write it without the comma.'],
    ["size", "16 TB", 'Found "16 TB" is not a number. Write digits alone, such as 42 or 0.5.'],
    ["date", "31.5.2026", 'Found "31.5.2026" is no date. Write it as 2026-05-31.'],
    ["serial", "  ", "Found is empty. Write or scan the serial number."],
    ["tick", "", "Found is empty. Choose Yes or No."],
    ["text", "x".repeat(32_768), "Found is longer than a cell takes. Write it shorter, and the rest into a file of its own."],
  ] as const)("as a %s, %.20j, is refused with what to write instead", (kind, text, sentence) => {
    expect(() => readAnswer(kind, text)).toThrow(Problem);
    expect(() => readAnswer(kind, text)).toThrow(sentence);
  });
});
