import type { Rule } from "../../../../../src/planning/checks";
import { drivesOutsideGroup } from "../../../../../src/planning/checks/rules/capacity/drives-outside-group";
import { rebuildReadFault } from "../../../../../src/planning/checks/rules/capacity/rebuild-read-fault";
import { schemeLayout } from "../../../../../src/planning/checks/rules/capacity/scheme-layout";
import { tooFewSpares } from "../../../../../src/planning/checks/rules/capacity/too-few-spares";
import { driveSetsDiffer } from "../../../../../src/planning/checks/rules/intent/drive-sets-differ";
import { drivesDiffer } from "../../../../../src/planning/checks/rules/intent/drives-differ";
import { moreDrivesThanBays } from "../../../../../src/planning/checks/rules/intent/more-drives-than-bays";
import { repeatedName } from "../../../../../src/planning/checks/rules/references/repeated-name";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

const fast = { array: "bi-array-1", set: "fast", drives: 4, driveSize: "8 TB", scheme: "RAID 10", spares: 0 };
const bulk = { array: "bi-array-1", set: "bulk", drives: 8, driveSize: "16 TB", scheme: "RAID 6", spares: 1 };

/** The sample with an array of two sets, its own columns empty. */
function withSets(...sets: EditableRows["driveSets"]): EditableRows {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { drives: null, driveSize: null, scheme: null, spares: null });
  return { ...rows, driveSets: sets };
}

describe("drive-sets-differ", () => {
  test("warns of each own column of an array that says something else than its sets", () => {
    const rows = withSets(fast, { ...bulk, pool: "Masters" }, { ...fast, set: "more", pool: "Masters" });
    rows.driveSets[0]!.pool = "Masters";
    Object.assign(rows.arrays[2]!, { drives: 12, driveSize: "16 TB", scheme: "RAID 6", spares: 2 });
    const rest = "Those count: empty this cell, or mend them.";
    expect(found(driveSetsDiffer, rows)).toEqual([
      `Arrays 7 Drives: Drives of bi-array-1 is not what its rows in Drive sets say: 16. ${rest}`,
      `Arrays 7 Drive size: Drive size of bi-array-1 is not what its rows in Drive sets say: 8 TB, 16 TB. ${rest}`,
      `Arrays 7 Scheme: Scheme of bi-array-1 is not what its rows in Drive sets say: RAID 10, RAID 6. ${rest}`,
      `Arrays 7 Spares: Spares of bi-array-1 is not what its rows in Drive sets say: 1. ${rest}`,
      `Arrays 7 Pool: Pool of bi-array-1 is not what its rows in Drive sets say: another pool. ${rest}`,
    ]);
  });

  test("takes empty ones, ones that say the same, and an array without rows there", () => {
    expect(cells(driveSetsDiffer, withSets(fast, bulk))).toEqual([]);
    const rows = withSets(bulk);
    Object.assign(rows.arrays[2]!, { drives: 8, driveSize: 16, scheme: "raid6", spares: 1 });
    expect(cells(driveSetsDiffer, rows)).toEqual([]);
    expect(cells(driveSetsDiffer, withSets({ ...fast, array: "none such" }))).toEqual([]);
  });
});

describe("what is said of the drives of an array is said of each of its sets, at its row", () => {
  test.each<[string, Rule, EditableRows["driveSets"], string[]]>([
    ["too few drives", schemeLayout, [fast, { ...bulk, drives: 3 }], ["Drive sets 6 Drives"]],
    ["as many spares as drives", schemeLayout, [{ ...fast, spares: 9 }, bulk], ["Drive sets 5 Spares"]],
    ["a drive outside its groups", drivesOutsideGroup, [{ ...fast, scheme: "RAID 50 2+1" }, bulk], ["Drive sets 5 Drives"]],
    ["single parity over large drives", rebuildReadFault, [fast, { ...bulk, scheme: "RAID 5" }], ["Drive sets 6 Scheme"]],
    ["a name twice", repeatedName, [fast, { ...bulk, set: "Fast" }], ["Drive sets 6 Set"]],
  ])("%s", (_, rule, sets, expected) => {
    expect(cells(rule, withSets(fast, bulk))).toEqual([]);
    expect(cells(rule, withSets(...sets))).toEqual(expected);
  });

  test("spares are counted for the whole array: one set may have none where another has one", () => {
    expect(cells(tooFewSpares, withSets(fast, bulk))).toEqual([]);
    expect(cells(tooFewSpares, withSets(fast, { ...bulk, spares: 0 }))).toEqual(["Arrays 7 Spares"]);
    expect(cells(tooFewSpares, withSets({ ...fast, scheme: "none" }, { ...bulk, scheme: "none", spares: 0 }))).toEqual([]);
  });

  test("bays are held against the drives of all sets, drives one by one against the smallest size", () => {
    expect(cells(moreDrivesThanBays, withSets(fast, bulk))).toEqual([]);
    expect(cells(moreDrivesThanBays, withSets({ ...fast, drives: 5 }, bulk))).toEqual(["Arrays 7 Drives"]);
    const rows = withSets(fast, bulk);
    rows.drives = Array.from({ length: 12 }, (_, at) => ({ array: "bi-array-1", bay: at + 1, size: at === 0 ? "4 TB" : "8 TB" }));
    expect(cells(drivesDiffer, rows)).toEqual(["Drives 5 Size"]);
  });
});
