import { ampsOf, formatAmps, formatKilograms, formatPercent, formatTerabytes, formatWatts, isNumberText, isPlainNumber, roundTo, splitNames, terabytesOf } from "../../../src/planning/text";

describe("figures are written one way", () => {
  test.each([[0.855, "85.5%"], [0.8, "80%"], [1, "100%"], [0.6667, "66.67%"], [0.28, "28%"], [0.07, "7%"], [0, "0%"], [1.5, "150%"], [0.000_04, "0%"]])("the share %p as %s", (share, text) => {
    expect(formatPercent(share)).toBe(text);
  });

  test.each([
    [240_870_000_000_000n, "240.87 TB"], [4_000_000_000_000n, "4 TB"], [1_234_567_890_123n, "1.23 TB"], [1_235_000_000_001n, "1.24 TB"],
    [0n, "0 TB"], [12_345_678_000_000_000_000n, "12345678 TB"],
  ])("%p bytes as %s", (size, text) => {
    expect(formatTerabytes(size)).toBe(text);
    expect(`${terabytesOf(size)} TB`).toBe(text);
  });

  test("currents, masses and powers with their units", () => {
    expect([formatAmps(12.8), formatAmps(3.3912), formatAmps(9)]).toEqual(["12.8 A", "3.39 A", "9 A"]);
    expect([formatKilograms(25.5), formatKilograms(0.1 + 0.2), formatKilograms(12.346)]).toEqual(["25.5 kg", "0.3 kg", "12.35 kg"]);
    expect([formatWatts(1199.6), formatWatts(80)]).toEqual(["1200 W", "80 W"]);
    expect(ampsOf(2.6087)).toBe(2.61);
  });

  test("rounded to the nearest, and never as a negative nothing", () => {
    expect([roundTo(0, 2.5), roundTo(1, 0.05), roundTo(2, 1.006)]).toEqual([3, 0.1, 1.01]);
    expect(Object.is(roundTo(2, -0.001), 0)).toBe(true);
  });
});

describe("a text is a number", () => {
  test.each([
    ["42", true, true], ["-0.5", true, true], ["+.5", true, true], ["3.", true, true], ["1E-15", false, true], ["2e3", false, true],
    ["1e", false, false], [".", false, false], ["1,5", false, false], [" 1", false, false], ["", false, false], ["1_000", false, false],
  ])(
    "%p: in plain digits %p, at all %p",
    (text, isPlain, isNumber) => {
      expect([isPlainNumber(text), isNumberText(text)]).toEqual([isPlain, isNumber]);
    },
  );
});

test("a cell names several things with commas between", () => {
  expect([splitNames(" a , b,,c "), splitNames(""), splitNames(" , ")]).toEqual([["a", "b", "c"], [], []]);
});
