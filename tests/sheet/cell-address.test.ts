import fc from "fast-check";
import { areaAddress, cellAddress, parseAreas, parseCell, sheetSize } from "../../src/sheet";

test.each([[0, 0, "A1"], [3, 1, "B4"], [9, 25, "Z10"], [0, 26, "AA1"], [0, 701, "ZZ1"], [0, 702, "AAA1"], [1_048_575, 16_383, "XFD1048576"]])(
  "row %i, column %i is %s",
  (row, column, address) => {
    expect(cellAddress({ row, column })).toBe(address);
    expect(parseCell(address)).toEqual({ row, column });
  },
);

test.each(["", "A", "1", "A0", "A01", "a1", "$A$1", "A1:B2", "XFE1", "A1048577", "Sheet1!A1"])("%j is not the address of one cell", (text) => {
  expect(parseCell(text)).toBeNull();
});

test("an area that is written is read again, whichever corner stands first", () => {
  const row = fc.integer({ min: 0, max: sheetSize.rows - 1 });
  const column = fc.integer({ min: 0, max: sheetSize.columns - 1 });
  fc.assert(
    fc.property(row, row, column, column, (a, b, c, d) => {
      const area = { row: Math.min(a, b), column: Math.min(c, d), rows: Math.abs(a - b) + 1, columns: Math.abs(c - d) + 1 };
      expect(parseAreas(areaAddress(area))).toEqual([area]);
      expect(parseAreas(`${cellAddress({ row: a, column: c })}:${cellAddress({ row: b, column: d })}`)).toEqual([area]);
    }),
    { seed: 9 },
  );
});

test.each([
  ["$B$2:$C$3 D1", [[1, 1, 2, 2], [0, 3, 1, 1]]],
  ["b2", [[1, 1, 1, 1]]],
  ["B:C", [[0, 1, 1_048_576, 2]]],
  ["2:3", [[1, 0, 2, 16_384]]],
  ["", []],
  ["Sheet1!A1 #REF!", []],
  ["A0 XFE1 A1048577 A1:XFE1 AAAA1", []],
])("%j is read as areas", (text, areas) => {
  expect(parseAreas(text).map(({ row, column, rows, columns }) => [row, column, rows, columns])).toEqual(areas);
});
