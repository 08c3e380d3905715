import type { TypingRule } from "../../../src/workbook/document/workbook-document";
import { emptyDocument } from "../../../src/workbook/document/workbook-document";
import { openDocument } from "../../../src/workbook/engine/open-document";
import { readResource, resourceNames } from "../../../src/workbook/engine/stored-sheet";
import { blankSheet } from "../../../src/workbook/xlsx/new-file";

test("a list that carries a second formula, as LibreOffice writes one, colours no cell", () => {
  const rule: TypingRule = { areas: [{ row: 0, column: 0, rows: 2, columns: 1 }], type: "list", formulas: ["bottom,top", "0"], allowsBlank: true, refuses: true, shows: false, weight: "stop" };
  const opened = openDocument({ ...emptyDocument, sheets: [{ ...blankSheet, id: "s", name: "S", typingRules: [rule] }] });
  expect(readResource(opened, resourceNames.validations)).toMatchObject({ s: [{ type: "list", formula1: "bottom,top" }] });
  expect(JSON.stringify(readResource(opened, resourceNames.validations))).not.toContain("formula2");
});

test.each(["list", "custom"] as const)("a rule of the kind %s is given no comparison: held against one, every cell would be marked as wrong", (type) => {
  const rule: TypingRule = { areas: [{ row: 0, column: 0, rows: 2, columns: 1 }], type, formulas: ["=TRUE"], allowsBlank: true, refuses: true, shows: false, weight: "stop" };
  const opened = openDocument({ ...emptyDocument, sheets: [{ ...blankSheet, id: "s", name: "S", typingRules: [rule] }] });
  expect(JSON.stringify(readResource(opened, resourceNames.validations))).not.toContain("operator");
});
