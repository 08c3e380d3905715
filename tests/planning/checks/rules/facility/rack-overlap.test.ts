import { rackOverlap } from "../../../../../src/planning/checks/rules/facility/rack-overlap";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array that fills a unit of another", () => {
  const rows = sample();
  Object.assign(rows.arrays[1]!, { rack: "RR-R1", bottomUnit: 13 });
  expect(found(rackOverlap, rows)).toEqual(["Arrays 6 Bottom unit: rr-array-2 fills units 13 to 16 of RR-R1, rr-array-1 units 10 to 13. Move one of them."]);
});

test("finds a switch inside an array, and an array above it that reaches less far", () => {
  const rows = sample();
  rows.switches[0]!.bottomUnit = 11;
  Object.assign(rows.arrays[1]!, { rack: "RR-R1", bottomUnit: 12 });
  expect(cells(rackOverlap, rows)).toEqual(["Switches 5 Bottom unit", "Arrays 6 Bottom unit"]);
});

test("takes arrays right above each other", () => {
  const rows = sample();
  Object.assign(rows.arrays[1]!, { rack: "RR-R1", bottomUnit: 14 });
  expect(cells(rackOverlap, rows)).toEqual([]);
});

test("counts from the top where the rack does: the lowest unit has the highest number", () => {
  const rows = sample();
  rows.racks[0]!.numberedFrom = "top";
  Object.assign(rows.arrays[1]!, { rack: "RR-R1", bottomUnit: 6 });
  expect(cells(rackOverlap, rows)).toEqual([]);
  rows.arrays[1]!.bottomUnit = 7;
  expect(found(rackOverlap, rows)).toEqual(["Arrays 6 Bottom unit: rr-array-2 fills units 4 to 7 of RR-R1, rr-array-1 units 7 to 10. Move one of them."]);
});

test("compares with the one that reaches highest so far, not with the last", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { bottomUnit: 10, units: 10 });
  rows.arrays.push({ array: "small", site: "Reading Room", rack: "RR-R1", bottomUnit: 12, units: 1 }, { array: "next", site: "Reading Room", rack: "RR-R1", bottomUnit: 15, units: 1 });
  expect(found(rackOverlap, rows)).toEqual([
    "Arrays 11 Bottom unit: small fills unit 12 of RR-R1, rr-array-1 units 10 to 19. Move one of them.",
    "Arrays 12 Bottom unit: next fills unit 15 of RR-R1, rr-array-1 units 10 to 19. Move one of them.",
  ]);
});

test("finds a shelf in the units of an array, and takes one just above it", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", rack: "RR-R1", bottomUnit: 13, units: 2 }];
  expect(found(rackOverlap, rows)).toEqual(["Shelves 5 Bottom unit: rr-array-1 S1 fills units 13 to 14 of RR-R1, rr-array-1 units 10 to 13. Move one of them."]);
  rows.shelves[0]!.bottomUnit = 14;
  expect(found(rackOverlap, rows)).toEqual([]);
});
