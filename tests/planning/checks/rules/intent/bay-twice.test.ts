import { bayTwice } from "../../../../../src/planning/checks/rules/intent/bay-twice";
import { found, sample } from "../../../../support/plan-rows";

function withDrives(...drives: Record<string, string | number>[]) {
  const rows = sample();
  rows.drives = drives.map((row) => ({ array: "rr-array-1", ...row }));
  return rows;
}

describe("bay-twice", () => {
  test("stops two drives in place in one bay, in the chassis and in a shelf", () => {
    expect(found(bayTwice, withDrives({ bay: 3 }, { bay: 4 }, { bay: 3 }, { shelf: "S1", bay: 3 }, { shelf: "s1", bay: 3 }))).toEqual([
      "Drives 7 Bay: In rr-array-1 bay 3 sits the drive of row 5 already. Write under Taken out when that one left, or another bay.",
      "Drives 9 Bay: In rr-array-1 s1 bay 3 sits the drive of row 8 already. Write under Taken out when that one left, or another bay.",
    ]);
  });

  test("is content once the first was taken out, with one bay number in two places, and with bays that are not known", () => {
    expect(found(bayTwice, withDrives({ bay: 3, takenOut: "2026-05-01" }, { bay: 3 }, { shelf: "S1", bay: 3 }, { array: "rr-array-2", bay: 3 }, {}, {}))).toEqual([]);
  });
});
