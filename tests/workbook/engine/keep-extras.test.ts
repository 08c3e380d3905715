import { shiftExtras } from "../../../src/workbook/engine/keep-extras";
import type { SheetExtras } from "../../../src/workbook/engine/stored-sheet";

const extras: SheetExtras = {
  tables: [{ name: "BayArrays", area: { row: 3, column: 1, rows: 5, columns: 4 } }],
  print: { orientation: "landscape", fitToWidth: true, titleRows: { row: 3, rows: 1 }, breaksBefore: [6, 9] },
};

const moved = (axis: "row" | "column", at: number, by: number) => {
  const { tables, print } = shiftExtras(extras, { axis, at, by });
  const area = tables?.[0]?.area;
  return {
    table: area === undefined ? null : [area.row, area.column, area.rows, area.columns],
    titles: print?.titleRows === undefined ? null : [print.titleRows.row, print.titleRows.rows],
    breaks: print?.breaksBefore,
  };
};

//   rows  3 [header]  4 5 6 7  -> the table's five rows
test("what came and went is remembered in its order", () => {
  const once = shiftExtras(extras, { axis: "row", at: 0, by: 3 });
  expect(shiftExtras(once, { axis: "column", at: 1, by: -1 }).moves).toEqual([{ axis: "row", at: 0, by: 3 }, { axis: "column", at: 1, by: -1 }]);
});

test.each([
  ["two rows come above the table", "row", 0, 2, { table: [5, 1, 5, 4], titles: [5, 1], breaks: [8, 11] }],
  ["a row comes inside the table", "row", 5, 1, { table: [3, 1, 6, 4], titles: [3, 1], breaks: [7, 10] }],
  ["a row comes right below the table", "row", 8, 1, { table: [3, 1, 5, 4], titles: [3, 1], breaks: [6, 10] }],
  ["two rows go above the table", "row", 1, -2, { table: [1, 1, 5, 4], titles: [1, 1], breaks: [4, 7] }],
  ["rows go inside the table", "row", 5, -2, { table: [3, 1, 3, 4], titles: [3, 1], breaks: [7] }],
  ["rows go across the upper edge of the table", "row", 2, -2, { table: [2, 1, 4, 4], titles: null, breaks: [4, 7] }],
  ["the whole table goes", "row", 0, -20, { table: null, titles: null, breaks: [] }],
  ["a column comes before the table", "column", 0, 1, { table: [3, 2, 5, 4], titles: [3, 1], breaks: [6, 9] }],
  ["a column goes inside the table", "column", 3, -1, { table: [3, 1, 5, 3], titles: [3, 1], breaks: [6, 9] }],
] as const)("when %s, everything stays with its cells", (_what, axis, at, by, expected) => {
  expect(moved(axis, at, by)).toEqual(expected);
});

test.each([
  ["the row of totals goes", "row", 7, -1, { rows: 4, totalRows: undefined }],
  ["a row goes with the row of totals", "row", 6, -2, { rows: 3, totalRows: undefined }],
  ["a row comes above the totals", "row", 7, 1, { rows: 6, totalRows: 1 }],
  ["a column comes", "column", 2, 1, { rows: 5, totalRows: 1 }],
] as const)("when %s, no row of data is taken for totals", (_what, axis, at, by, expected) => {
  const table = { name: "Stock", area: { row: 3, column: 1, rows: 5, columns: 4 }, totalRows: 1 };
  const { area, totalRows } = shiftExtras({ tables: [table] }, { axis, at, by }).tables![0]!;
  expect({ rows: area.rows, totalRows }).toEqual(expected);
});
