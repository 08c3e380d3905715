import { isBlankCell } from "../../../src/taskpane/elements/is-blank-cell";
import { workbookOf } from "../../support/plain-workbook";

test("a cell is blank where it holds neither a value nor a formula, inside what is used of the sheet and outside", () => {
  const [sheet] = workbookOf({ Plan: [["", null, 0, false, " ", { error: "#N/A" }, null]] }).sheets;
  const withFormula = { ...sheet!, formulas: [[null, null, null, null, null, null, '=""']] };
  expect([0, 1, 2, 3, 4, 5, 6, 7].map((column) => isBlankCell(withFormula, { row: 0, column }))).toEqual([true, true, false, false, false, false, false, true]);
  expect(isBlankCell(withFormula, { row: 9, column: 0 })).toBe(true);
});
