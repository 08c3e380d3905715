import { isBlank, isError, showCell } from "../../src/sheet";

// IEEE 754 keeps 0.1 + 0.2 as 0.30000000000000004; the spreadsheet host's published limits give numbers 15 significant digits.
test.each([
  [null, ""], [undefined, ""], ["", ""], [" a ", " a "], [0, "0"], [0.1 + 0.2, "0.3"], [1 / 3, "0.333333333333333"], [123_456_789.012_345, "123456789.012345"],
  [-1.5, "-1.5"], [true, "TRUE"], [false, "FALSE"], [{ error: "#N/A" }, "#N/A"],
])("a cell of %p is shown as %p", (cell, shown) => {
  expect(showCell(cell)).toBe(shown);
});

test("a cell is blank where it holds nothing but blanks; 0, FALSE and an error are something", () => {
  expect([null, undefined, "", " \t\n"].map(isBlank)).toEqual([true, true, true, true]);
  expect([0, false, "a", { error: "#N/A" }].map(isBlank)).toEqual([false, false, false, false]);
});

test("an error is told from what a cell may hold otherwise", () => {
  expect([{ error: "#N/A" }, "#N/A", null, undefined, 0].map(isError)).toEqual([true, false, false, false, false]);
});
