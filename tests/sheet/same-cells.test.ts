import { sameCells, type SheetSnapshot } from "../../src/sheet";

const sheet: SheetSnapshot = {
  name: "Tab", visible: true, protected: false, values: [["a", 1], [null, { error: "#N/A" }]], formulas: [[null, "=1"], [null, null]], tables: [], attachments: 1,
};

test.each<[string, Partial<SheetSnapshot>]>([
  ["another name", { name: "Tab before 1", visible: false }],
  ["rows read anew", { values: [["a", 1], [null, { error: "#N/A" }]], formulas: [[null, "=1"], [null, null]] }],
])("a sheet with %s holds the same cells", (_, change) => {
  expect(sameCells(sheet, { ...sheet, ...change })).toBe(true);
});

test.each<[string, Partial<SheetSnapshot>]>([
  ["value", { values: [["a", 2], [null, { error: "#N/A" }]] }],
  ["kind of value", { values: [["a", "1"], [null, { error: "#N/A" }]] }],
  ["error", { values: [["a", 1], [null, { error: "#REF!" }]] }],
  ["formula", { formulas: [[null, "=2"], [null, null]] }],
  ["further row", { values: [["a", 1], [null, { error: "#N/A" }], ["b"]] }],
  ["further column", { values: [["a", 1, "b"], [null, { error: "#N/A" }]] }],
  ["comment", { attachments: 2 }],
])("a sheet with another %s does not", (_, change) => {
  expect(sameCells(sheet, { ...sheet, ...change })).toBe(false);
});

test("a sheet that is gone holds what is not there, and nothing else", () => {
  expect([sameCells(undefined, null), sameCells(sheet, undefined), sameCells(null, sheet)]).toEqual([true, false, false]);
});
