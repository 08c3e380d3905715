import { baysNotKnown } from "../../../../../src/planning/checks/rules/intent/bays-not-known";
import { found, sample } from "../../../../support/plan-rows";

describe("bays-not-known", () => {
  test("notes a model without bays, a shelf without bays, an array without a model, and a drive without a bay", () => {
    const rows = sample();
    rows.models = [{ model: "Alder 24" }, { model: "Sorrel 4" }];
    rows.shelves = [{ array: "rr-array-1", shelf: "S1" }];
    rows.drives = [{ array: "bi-array-1", bay: 1 }, { array: "rr-array-1" }, { array: "rr-array-1" }];
    expect(found(baysNotKnown, rows)).toEqual([
      "Models 5 Bays: How many bays Alder 24 has is blank: held against nothing are the drives of rr-array-1, rr-array-2, cs-array-1, cs-array-2.",
      "Shelves 5 Bays: How many bays rr-array-1 S1 has is blank, so drives are held against nothing there. Write it.",
      "Arrays 7 Model: How many bays bi-array-1 has is not known, so its drives are held against nothing. Add its model to the table Models.",
      "Drives 6 Bay: In which bay this drive of rr-array-1 and 1 more sits is blank, so no tab expects its serial number. Write the bay.",
    ]);
  });

  test("is content where all of them say it, and where a drive without a bay was taken out", () => {
    const rows = sample();
    rows.models = [{ model: "Alder 24", bays: 24 }];
    rows.shelves = [{ array: "rr-array-1", shelf: "S1", bays: 12 }];
    rows.drives = [{ array: "rr-array-1", bay: 1 }, { array: "rr-array-1", takenOut: "2026-05-01" }, { array: "bi-array-1", shelf: "S1", bay: 1 }];
    expect(found(baysNotKnown, rows)).toEqual([]);
  });

  test("has nothing to say of a plan without these tables", () => {
    expect(found(baysNotKnown, sample())).toEqual([]);
  });
});
