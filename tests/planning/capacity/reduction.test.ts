import { parseReduction } from "../../../src/planning/capacity";
import { problemOf } from "../../support/sentence";

test.each<[string | number, number, number]>([
  [3, 3, 1],
  ["3:1", 3, 1],
  ["2.5 : 1", 5, 2],
  [1, 1, 1],
  ["1:1", 1, 1],
  ["4:4", 1, 1],
  [1000, 1000, 1],
  ["1000:1", 1000, 1],
  // As a time it would be 72:01, but for half a second.
  [3.0007, 30007, 10000],
])("%p is %i to %i", (written, before, after) => {
  const { numerator, denominator } = parseReduction(written, "reduction");
  expect(numerator * BigInt(after)).toBe(denominator * BigInt(before));
});

test.each<[string | number | null, string]>([
  [3 / 24 + 1 / 1440, "reduction is 0.125694444444444, which looks like a time: 3:1 without quotes is 03:01. Write \"3:1\" in quotes."],
  [30 / 24 + 1 / 1440, "reduction is 1.25069444444444, which looks like a time: 30:1 without quotes is 30:01. Write \"30:1\" in quotes."],
  [0.5, 'reduction is 0.5, which looks like a time: 3:1 without quotes is 03:01. Write a ratio in quotes, such as "3:1".'],
  [12 / 24 + 34 / 1440, 'reduction is 0.523611111111111, which looks like a time: 3:1 without quotes is 03:01. Write a ratio in quotes, such as "3:1".'],
  [5 / 24 + 2 / 1440, 'reduction is 0.209722222222222, which looks like a time: 5:2 without quotes is 05:02. Write "5:2" in quotes.'],
  ["2,5:1", 'reduction "2,5:1" has a comma. Write 2.5:1.'],
  [0, "reduction is 0. Write a number from 1 to 1000, such as 3."],
  [-2, "reduction is -2. Write a number from 1 to 1000, such as 3."],
  ["1:3", 'reduction "1:3" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["1000:1000.001", 'reduction "1000:1000.001" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["1000.001:1", 'reduction "1000.001:1" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["3:0", 'reduction "3:0" is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".'],
  ["lots", 'reduction is the text "lots". Write a number from 1 to 1000, such as 3.'],
  [null, "reduction is blank. Write a number from 1 to 1000, such as 3."],
])("a reduction of %p is refused", (reduction, sentence) => {
  expect(problemOf(() => parseReduction(reduction, "reduction")).sentence).toBe(sentence);
});
