import { bayBeyondModel } from "../../../../../src/planning/checks/rules/intent/bay-beyond-model";
import { found, sample } from "../../../../support/plan-rows";

function withDrives(...drives: Record<string, string | number>[]) {
  const rows = sample();
  rows.models = [{ model: "Alder 24", bays: 24 }];
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", bays: 12 }, { array: "rr-array-1", shelf: "S2" }];
  rows.drives = drives.map((row) => ({ array: "rr-array-1", ...row }));
  return rows;
}

describe("bay-beyond-model", () => {
  test("stops a drive in a bay that its chassis or its shelf does not have, and one in bay 0", () => {
    expect(found(bayBeyondModel, withDrives({ bay: 25 }, { shelf: "s1", bay: 13 }, { bay: 0 }))).toEqual([
      "Drives 5 Bay: There is no rr-array-1 bay 25: it has bays 1 to 24. Write one of them.",
      "Drives 6 Bay: There is no rr-array-1 s1 bay 13: it has bays 1 to 12. Write one of them.",
      "Drives 7 Bay: There is no rr-array-1 bay 0: bays are counted from 1.",
    ]);
  });

  test("is content with the last bay of each, and with a drive that was taken out", () => {
    expect(found(bayBeyondModel, withDrives({ bay: 24 }, { bay: 1 }, { shelf: "S1", bay: 12 }, { bay: 99, takenOut: "2026-05-01" }, {}))).toEqual([]);
  });

  test("says nothing where the number of bays is not known", () => {
    expect(found(bayBeyondModel, withDrives({ shelf: "S2", bay: 99 }, { array: "bi-array-1", bay: 99 }, { array: "nowhere", bay: 99 }, { shelf: "S9", bay: 99 }))).toEqual([]);
  });
});
