import { missingKeyColumn } from "../../../../../src/planning/checks/rules/references/missing-key-column";
import { withCell } from "../../../../support/plain-workbook";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

test("finds a table whose naming column has another header", () => {
  const workbook = withCell(workbookWith(sample()), "Racks", 3, 0, "Cabinet");
  expect(found(missingKeyColumn, workbook)).toEqual(["Racks 4 Cabinet: Table Racks has no column Rack, so its rows cannot be told apart. Give that column the header Rack."]);
});

test("does not mind a table that is not there, or a column that names nothing", () => {
  const workbook = withCell(workbookWith(sample()), "Racks", 3, 4, "Deep");
  expect(cells(missingKeyColumn, workbook)).toEqual([]);
  expect(cells(missingKeyColumn, { sheets: [] })).toEqual([]);
});
