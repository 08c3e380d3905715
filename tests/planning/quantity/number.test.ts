import { parseNumber } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

describe("a number keeps to its rule", () => {
  test.each([
    [0, "watts is 0. Write a number above 0 and at most 1000, such as 450."],
    [1000.5, "watts is 1000.5. Write a number above 0 and at most 1000, such as 450."],
    [null, "watts is blank. Write a number above 0 and at most 1000, such as 450."],
    [true, "watts is TRUE. Write a number above 0 and at most 1000, such as 450."],
    ["many", 'watts is the text "many". Write a number above 0 and at most 1000, such as 450.'],
    ["450", 'watts is the text "450". Write it as a number, without quotes.'],
  ])("%p is refused", (value, sentence) => {
    expect(problemOf(() => parseNumber(value, "watts", { above: 0, max: 1000, example: 450 }))).toMatchObject({ kind: "invalid", argument: "watts", sentence });
  });

  test("a count is whole", () => {
    expect(problemOf(() => parseNumber(1.5, "drives", { min: 1, whole: true, max: 9, example: 4 })).sentence).toBe(
      "drives is 1.5. Write a whole number from 1 to 9, such as 4.",
    );
  });

  test("a bound can be kept out", () => {
    const rule = { min: 0, below: 1, example: 0.25 };
    expect(parseNumber(0.999, "share", rule)).toBe(0.999);
    expect(problemOf(() => parseNumber(1, "share", rule)).sentence).toBe("share is 1. Write a number from 0 to below 1, such as 0.25.");
  });

  test("a blank means the default where there is one", () => {
    expect(parseNumber(null, "years", { above: 0, default: 1, example: 5 })).toBe(1);
  });

  test("a sum that the sheet shows as 3.3 is 3.3", () => {
    expect(parseNumber(1.1 + 2.2, "size", { above: 0, example: 4 })).toBe(3.3);
  });

  test.each([1e-308, 5e-324, 9.99e-16])("%p is nothing where 0 is refused, since what is divided by it would overflow; where 0 is taken it is a number", (tiny) => {
    expect(problemOf(() => parseNumber(tiny, "rate", { above: 0, max: 1e9, example: 400 })).sentence).toBe(
      `rate is ${tiny}, which is nearly 0. Write a number above 0 and at most 1000000000, such as 400.`,
    );
    expect(parseNumber(1e-15, "rate", { above: 0, example: 400 })).toBe(1e-15);
    expect(parseNumber(1e-308, "chance", { min: 0, max: 1, example: 0.1 })).toBe(1e-308);
  });

  test("nothing is unbounded above", () => {
    expect(parseNumber(1e15, "size", { above: 0, example: 4 })).toBe(1e15);
    expect(problemOf(() => parseNumber(1.00000000000001e15, "size", { above: 0, example: 4 })).sentence).toBe(
      "size is 1000000000000010. Write a number above 0 and at most 1000000000000000, such as 4.",
    );
    expect(problemOf(() => parseNumber(Infinity, "size", { min: 0, example: 4 })).sentence).toBe(
      "size is Infinity. Write a number from 0 to 1000000000000000, such as 4.",
    );
  });
});
