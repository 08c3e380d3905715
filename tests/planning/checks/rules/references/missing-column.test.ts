import { missingColumn } from "../../../../../src/planning/checks/rules/references/missing-column";
import { withCell } from "../../../../support/plain-workbook";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

test("notes a column that was renamed, because nothing about it is checked", () => {
  const workbook = withCell(workbookWith(sample()), "Racks", 3, 4, "How deep");
  expect(found(missingColumn, workbook)).toEqual(["Racks 4 Rack: Table Racks has no column Depth mm, so nothing about it is checked. If it was renamed, give it the header Depth mm."]);
});

test("finds a column whatever its case and its place", () => {
  const renamed = withCell(workbookWith(sample()), "Racks", 3, 4, "depth MM ");
  const swapped = withCell(withCell(renamed, "Racks", 3, 4, "Limit kg"), "Racks", 3, 5, "Depth mm");
  expect(cells(missingColumn, renamed)).toEqual([]);
  expect(cells(missingColumn, swapped)).toEqual([]);
});
