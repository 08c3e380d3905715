import { RepeatedCells } from "../../../src/workbook/xlsx/repeated-cells";
import type { DocumentCell } from "../../../src/workbook/document/workbook-document";

const cell: DocumentCell = { value: "open", formula: "=A1", look: 3, hasResult: true };

test("cells that are alike are one", () => {
  const repeated = new RepeatedCells();
  const first = repeated.cell(cell);
  expect(repeated.cell({ ...cell })).toBe(first);
});

test.each<[string, Partial<DocumentCell>]>([
  ["value", { value: "shut" }],
  ["kind of value", { value: "1" }],
  ["sign of zero", { value: -0 }],
  ["formula", { formula: "=A2" }],
  ["text in place of a formula", { value: "=A1", formula: undefined, hasResult: undefined }],
  ["look", { look: 4 }],
  ["missing result", { hasResult: false }],
  ["link", { link: "https://example.com" }],
  ["array", { array: { row: 0, column: 0, rows: 2, columns: 1 } }],
  ["error", { value: { error: "#N/A" } }],
])("a cell with another %s stays itself", (_, other) => {
  const repeated = new RepeatedCells();
  for (const value of ["open", 1, 0, null]) repeated.cell({ ...cell, value });
  const made = { ...cell, ...other };
  expect(repeated.cell(made)).toStrictEqual(made);
});

test("cells beyond those that are kept are given back as they are", () => {
  const repeated = new RepeatedCells();
  const made = Array.from({ length: 120_000 }, (_, value): DocumentCell => ({ value, look: 0 }));
  expect(made.filter((one) => repeated.cell(one) !== one)).toEqual([]);
  expect(repeated.cell({ value: 119_999, look: 0 })).toStrictEqual({ value: 119_999, look: 0 });
});

test("a shared formula says the same on every sheet, in every direction", () => {
  const repeated = new RepeatedCells();
  const [one, other] = [repeated.formula("B5+$B$1"), repeated.formula("B5+$B$1")];
  expect(other).toBe(one);
  const places = [[0, 0], [1, 0], [-1, 0], [0, 1], [0, -1], [3, 1], [-4, 0]] as const;
  const expected = ["=B5+$B$1", "=B6+$B$1", "=B4+$B$1", "=C5+$B$1", "=A5+$B$1", "=C8+$B$1", "=B1+$B$1"];
  for (let round = 0; round < 2; round += 1) expect(places.map(([rows, columns]) => one(rows, columns))).toEqual(expected);
});
