import { columnLetters, columnNumber, sheetSize } from "../../src/sheet";

// The spreadsheet host's published limits: 16,384 columns, the last of which is XFD.
const columns: [string, number][] = [
  ["A", 0], ["Z", 25], ["AA", 26], ["AZ", 51], ["BA", 52], ["IV", 255], ["ZZ", 701], ["AAA", 702], ["XFD", 16_383],
];

test.each(columns)("column %s is number %i, counted from 0", (letters, number) => {
  expect(columnLetters(number)).toBe(letters);
  expect(columnNumber(letters)).toBe(number);
  expect(columnNumber(letters.toLowerCase())).toBe(number);
});

test("every column has a name of its own, in the order of length and alphabet", () => {
  const names = Array.from({ length: sheetSize.columns }, (_, column) => columnLetters(column));
  const padded = names.map((name) => name.padStart(3));
  expect(padded).toEqual([...padded].sort());
  expect(new Set(names).size).toBe(sheetSize.columns);
  expect(names.map(columnNumber)).toEqual(names.map((_, column) => column));
});

test.each(["", "XFE", "ZZZ", "AAAA", "A1", "Ä", " A"])("%j names no column", (text) => {
  expect(columnNumber(text)).toBeNull();
});
