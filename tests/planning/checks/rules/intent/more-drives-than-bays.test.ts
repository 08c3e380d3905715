import { moreDrivesThanBays } from "../../../../../src/planning/checks/rules/intent/more-drives-than-bays";
import { found, sample } from "../../../../support/plan-rows";

function withBays(bays: number | null, ...shelves: (number | null)[]) {
  const rows = sample();
  rows.models = [{ model: "Rowan 12", bays }];
  rows.shelves = shelves.map((own, at) => ({ array: "bi-array-1", shelf: `S${at + 1}`, bays: own }));
  rows.arrays[2]!.drives = 37;
  return rows;
}

describe("more-drives-than-bays", () => {
  test("stops an array with more drives than bays, its shelves included", () => {
    expect(found(moreDrivesThanBays, withBays(36))).toEqual(["Arrays 7 Drives: bi-array-1 has 37 drives and 36 bays. Plan fewer, or a shelf more."]);
    expect(found(moreDrivesThanBays, withBays(12, 24))).toEqual(["Arrays 7 Drives: bi-array-1 has 37 drives and 36 bays, those of its shelf included. Plan fewer, or a shelf more."]);
    expect(found(moreDrivesThanBays, withBays(12, 12, 12))).toEqual(["Arrays 7 Drives: bi-array-1 has 37 drives and 36 bays, those of its 2 shelves included. Plan fewer, or a shelf more."]);
  });

  test.each([[37, []], [13, [24]], [12, [24, null]], [null, [36]]])("is content with %p bays and shelves of %p", (bays, shelves) => {
    expect(found(moreDrivesThanBays, withBays(bays, ...shelves))).toEqual([]);
  });
});
