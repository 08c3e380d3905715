import { cellName } from "../../../src/taskpane/elements/cell-name";
import { describeAge } from "../../../src/taskpane/elements/describe-age";

test.each([[0, 0, "A1"], [3, 1, "B4"], [0, 25, "Z1"], [0, 26, "AA1"], [9, 701, "ZZ10"], [1048575, 16383, "XFD1048576"]])("row %i, column %i is called %s", (row, column, name) => {
  expect(cellName({ row, column })).toBe(name);
});

test.each([[0, "just now"], [1999, "just now"], [2000, "2 s ago"], [59_999, "59 s ago"], [60_000, "1 min ago"], [3_600_000, "1 h ago"]])("%i ms are %s", (milliseconds, words) => {
  expect(describeAge(milliseconds)).toBe(words);
});
