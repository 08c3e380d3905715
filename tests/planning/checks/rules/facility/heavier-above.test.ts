import { heavierAbove } from "../../../../../src/planning/checks/rules/facility/heavier-above";
import { cells, found, sample, set } from "../../../../support/plan-rows";

test("finds an array in the upper half above one that is 10 kg lighter", () => {
  const rows = sample();
  Object.assign(rows.arrays[3]!, { rack: "BI-R1", bottomUnit: 22, weightKg: 39 });
  expect(found(heavierAbove, rows)).toEqual(["Arrays 8 Bottom unit: bi-array-2 (39 kg) stands high in BI-R1 above bi-array-1 (29 kg). Put the heavier one lower."]);
});

test.each([["in the lower half", 21, 39], ["a little lighter", 22, 38.9], ["below the lighter one", 4, 60]])("takes one that stands %s", (_, bottomUnit, weightKg) => {
  const rows = sample();
  Object.assign(rows.arrays[3]!, { rack: "BI-R1", bottomUnit, weightKg });
  expect(cells(heavierAbove, rows)).toEqual([]);
});

test("follows the setting", () => {
  const rows = sample();
  Object.assign(rows.arrays[3]!, { rack: "BI-R1", bottomUnit: 22, weightKg: 39 });
  set(rows, "Heavier above kg", "10.5");
  expect(cells(heavierAbove, rows)).toEqual([]);
});

test("compares with the lightest below, whichever it is, and passes over what has no weight", () => {
  const rows = sample();
  const [light, heavy, high] = [rows.arrays[2]!, rows.arrays[3]!, rows.arrays[0]!];
  Object.assign(high, { rack: "BI-R1", bottomUnit: 30, weightKg: 40 });
  Object.assign(light, { bottomUnit: 4, weightKg: 20 });
  Object.assign(heavy, { rack: "BI-R1", bottomUnit: 12, weightKg: 35 });
  expect(found(heavierAbove, rows)).toEqual(["Arrays 5 Bottom unit: rr-array-1 (40 kg) stands high in BI-R1 above bi-array-1 (20 kg). Put the heavier one lower."]);
  Object.assign(light, { bottomUnit: 12, weightKg: 20 });
  Object.assign(heavy, { bottomUnit: 4 });
  expect(cells(heavierAbove, rows)).toEqual(["Arrays 5 Bottom unit"]);
  Object.assign(light, { model: null, weightKg: null });
  expect(cells(heavierAbove, rows)).toEqual([]);
});
