import { rackNotKnown } from "../../../../../src/planning/checks/rules/facility/rack-not-known";
import { found, sample } from "../../../../support/plan-rows";

describe("rack-not-known", () => {
  test("notes what says no units, and arrays and shelves that say no weight", () => {
    const rows = sample();
    rows.shelves = [{ array: "cs-array-1", shelf: "S1", rack: "CS-R1", bottomUnit: 20 }];
    Object.assign(rows.arrays[0]!, { model: null, units: 4 });
    expect(found(rackNotKnown, rows)).toEqual([
      "Racks 5 Rack: RR-R1: It carries 0 kg without rr-array-1, whose weight is blank.",
      "Racks 9 Rack: CS-R1: cs-array-1 S1 counted as one unit, Units is blank. It carries 92 kg without cs-array-1 S1, whose weight is blank.",
    ]);
  });

  test("names the first and counts the others", () => {
    const rows = sample();
    rows.shelves = ["S1", "S2", "S3"].map((shelf) => ({ array: "cs-array-1", shelf, rack: "CS-R1", units: 2 }));
    expect(found(rackNotKnown, rows)).toEqual(["Racks 9 Rack: CS-R1: It carries 92 kg without cs-array-1 S1 and 2 more, whose weight is blank."]);
  });

  test("is content where all of it says both, a switch only its units, and where the model says it", () => {
    const rows = sample();
    rows.shelves = [{ array: "cs-array-1", shelf: "S1", rack: "CS-R1", bottomUnit: 20, units: 2, weightKg: 18 }];
    expect(found(rackNotKnown, rows)).toEqual([]);
    rows.models[0]!.weightKg = null;
    expect(found(rackNotKnown, rows)).toHaveLength(3);
  });
});
