import { effectiveBytes, parseReduction } from "../../../src/planning/capacity";
import { bytes, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

test.each<[string | number, bigint]>([
  [3, 240n],
  ["3:1", 240n],
  ["3 : 2", 120n],
  ["2.5:1", 200n],
  [1, 80n],
  [1.25, 100n],
  [30, 2400n],
])("a reduction of %p lets 100 bytes filled to 80 %% hold %p", (reduction, logical) => {
  expect(effectiveBytes(bytes(100n), parseReduction(reduction, "reduction"), share(0.8))).toBe(logical);
});

test.each<[string | number | null, string]>([
  [3 / 24 + 1 / 1440, "reduction is 0.125694444444444, which looks like a time: 3:1 without quotes is 03:01. Write 3, or \"3:1\" in quotes."],
  [30 / 24 + 1 / 1440, "reduction is 1.25069444444444, which looks like a time: 3:1 without quotes is 03:01. Write 3, or \"3:1\" in quotes."],
  [0, "reduction is 0. Write a number from 1 to 1000, such as 3."],
  [-2, "reduction is -2. Write a number from 1 to 1000, such as 3."],
  ["1:3", 'reduction "1:3" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["3:0", 'reduction "3:0" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["lots", 'reduction is the text "lots". Write a number from 1 to 1000, such as 3.'],
  [null, "reduction is blank. Write a number from 1 to 1000, such as 3."],
])("a reduction of %p is refused", (reduction, sentence) => {
  expect(problemOf(() => parseReduction(reduction, "reduction")).sentence).toBe(sentence);
});
