import { sameValues, type SheetSnapshot } from "../../src/sheet";

const sheet: SheetSnapshot = {
  name: "Tab", visible: true, protected: false, values: [["a", 1], [null, { error: "#N/A" }]], formulas: [[null, "=1"], [null, null]], tables: [], attachments: 1,
};

test.each<[string, Partial<SheetSnapshot>]>([
  ["another name", { name: "Tab before 1", visible: false }],
  ["rows read anew", { values: [["a", 1], [null, { error: "#N/A" }]] }],
  ["a formula that answers nothing in a blank cell", { values: [["a", 1], ["", { error: "#N/A" }]] }],
  ["its formulas unread", { formulas: [] }],
])("a sheet with %s shows the same", (_, change) => {
  expect(sameValues(sheet, { ...sheet, ...change })).toBe(true);
});

test.each<[string, Partial<SheetSnapshot>]>([
  ["value", { values: [["a", 2], [null, { error: "#N/A" }]] }],
  ["kind of value", { values: [["a", "1"], [null, { error: "#N/A" }]] }],
  ["error", { values: [["a", 1], [null, { error: "#REF!" }]] }],
  ["further row", { values: [["a", 1], [null, { error: "#N/A" }], ["b"]] }],
  ["further column", { values: [["a", 1, "b"], [null, { error: "#N/A" }]] }],
  ["comment", { attachments: 2 }],
])("a sheet with another %s does not", (_, change) => {
  expect(sameValues(sheet, { ...sheet, ...change })).toBe(false);
});

test("a sheet that is gone shows what is not there, and nothing else", () => {
  expect([sameValues(undefined, null), sameValues(sheet, undefined), sameValues(null, sheet)]).toEqual([true, false, false]);
});
