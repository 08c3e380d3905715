import { unreadableCell } from "../../../../../src/planning/checks/rules/references/unreadable-cell";
import { withCell } from "../../../../support/plain-workbook";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

test("finds a cell that its column cannot read, and says what to write", () => {
  const rows = sample();
  Object.assign(rows.arrays[1]!, { driveSize: "8 Tb", scheme: "RAID 60", liftBy: "three" });
  expect(cells(unreadableCell, rows)).toEqual(["Arrays 6 Lift by", "Arrays 6 Drive size", "Arrays 6 Scheme"]);
  expect(found(unreadableCell, rows)[2]).toContain("Give the group shape");
});

test("finds a cell that shows an error", () => {
  const workbook = withCell(workbookWith(sample()), "Racks", 4, 2, { error: "#REF!" });
  expect(found(unreadableCell, workbook)).toEqual(["Racks 5 Units: Units shows #REF!. Mend that cell first."]);
});

test("takes a blank, digits typed as text and a share as a percentage", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { reserve: "10%", spares: null, weightKg: "46" });
  expect(cells(unreadableCell, rows)).toEqual([]);
});
