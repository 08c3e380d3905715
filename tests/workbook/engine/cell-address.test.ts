import fc from "fast-check";
import { areaAddress, cellAddress, parseAreas } from "../../../src/workbook/engine/cell-address";

test.each([[0, 0, "A1"], [9, 25, "Z10"], [0, 26, "AA1"], [0, 701, "ZZ1"], [0, 702, "AAA1"], [1_048_575, 16_383, "XFD1048576"]])("row %i, column %i is %s", (row, column, address) => {
  expect(cellAddress(row, column)).toBe(address);
});

test("an area that is written is read again", () => {
  const row = fc.integer({ min: 0, max: 1_048_575 });
  const column = fc.integer({ min: 0, max: 16_383 });
  fc.assert(
    fc.property(row, row, column, column, (a, b, c, d) => {
      const range = { startRow: Math.min(a, b), endRow: Math.max(a, b), startColumn: Math.min(c, d), endColumn: Math.max(c, d) };
      expect(parseAreas(areaAddress(range))).toEqual([range]);
    }),
    { seed: 9 },
  );
});

test.each([
  ["$B$2:$C$3 D1", [[1, 1, 2, 2], [0, 3, 0, 3]]],
  ["B:C", [[0, 1, 1_048_575, 2]]],
  ["2:3", [[1, 0, 2, 16_383]]],
  ["", []],
  ["Sheet1!A1 #REF!", []],
])("%s is read as areas", (text, areas) => {
  expect(parseAreas(text).map(({ startRow, startColumn, endRow, endColumn }) => [startRow, startColumn, endRow, endColumn])).toEqual(areas);
});
