import { isInCircle } from "../../../src/standalone/grid/circle";

/** Formulas by sheet and cell, such as "Sheet1!A1". */
const workbook: Readonly<Record<string, string>> = {
  "Sheet1!A1": "=A1+1",
  "Sheet1!B1": "=C1*2", "Sheet1!C1": "=Other!A1", "Other!A1": "=SUM(Sheet1!B1:B9)",
  "Sheet1!D1": "=D2", "Sheet1!D2": "=D3", "Sheet1!D3": "=A1",
  "Sheet1!E1": "=SUM(E2:E9)",
};
const formulaOf = ({ sheet, row, column }: { sheet: string; row: number; column: number }) => workbook[`${sheet}!${String.fromCharCode(65 + column)}${row + 1}`] ?? null;

test.each([
  ["a cell that adds to itself", 0, true],
  ["a circle by way of another sheet and a range", 1, true],
  ["one cell of that circle", 2, true],
  ["a cell that only looks at a circle", 3, false],
  ["a sum of the cells below", 4, false],
])("%s", (_, column, circular) => {
  expect(isInCircle({ sheet: "Sheet1", row: 0, column }, formulaOf)).toBe(circular);
});
