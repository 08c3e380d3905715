import { drivesDiffer } from "../../../../../src/planning/checks/rules/intent/drives-differ";
import { found, sample } from "../../../../support/plan-rows";

/** The sample with twelve drives of one array one by one, as many as it says. */
function twelve() {
  const rows = sample();
  rows.drives = Array.from({ length: 12 }, (_, at) => ({ array: "bi-array-1", bay: at + 1, size: "16 TB" }));
  return rows;
}

describe("drives-differ", () => {
  test("warns where an array says another number of drives than are in place", () => {
    const rows = twelve();
    rows.drives[4]!.takenOut = "2026-05-01";
    expect(found(drivesDiffer, rows)).toEqual(["Arrays 7 Drives: Its Drives are 12, the table Drives has 11 of bi-array-1 in place. Mend the one that is wrong."]);
    rows.arrays[2]!.drives = null;
    expect(found(drivesDiffer, rows)).toEqual(["Arrays 7 Drives: Its Drives are blank, the table Drives has 11 of bi-array-1 in place. Mend the one that is wrong."]);
  });

  test("warns of a drive that is smaller than the array counts it, and not of a larger one", () => {
    const rows = twelve();
    rows.drives[0]!.size = "8 TB";
    rows.drives[1]!.size = "18 TB";
    expect(found(drivesDiffer, rows)).toEqual(["Drives 5 Size: This drive is smaller than the Drive size of bi-array-1, from which its capacity is worked out. Mend one of the two."]);
  });

  test("is content with a drive that was replaced, its successor in place", () => {
    const rows = twelve();
    rows.drives[4]!.takenOut = "2026-05-01";
    rows.drives.push({ array: "bi-array-1", bay: 5 }, { array: "bi-array-1", bay: 6, size: "4 TB", takenOut: "2025-01-31" });
    expect(found(drivesDiffer, rows)).toEqual([]);
  });

  test("has nothing to say of an array that has no row in Drives", () => {
    expect(found(drivesDiffer, { ...twelve(), drives: [] })).toEqual([]);
  });
});
