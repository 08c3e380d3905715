import { describeAge } from "../../../src/taskpane/elements/describe-age";

test.each([[0, "just now"], [1999, "just now"], [2000, "2 s ago"], [59_999, "59 s ago"], [60_000, "1 min ago"], [3_600_000, "1 h ago"]])("%i ms are %s", (milliseconds, words) => {
  expect(describeAge(milliseconds)).toBe(words);
});
