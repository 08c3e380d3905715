import { liftAid } from "../../../../../src/planning/checks/rules/facility/lift-aid";
import { cells, found, mends, sample, set } from "../../../../support/plan-rows";

// Reach 35 cm, from 75 cm to unit 12 (10 + 11 x 4.445 = 58.9 cm): 23 x 25/35 x (1 - 0.003 x 16.1) x 0.95 = 14.85 kg for one person, by the
// equation of NIOSH publication 94-110; two people lift 0.667 x 2 x 14.85 = 19.8 kg.
test.each([
  [14.8, "one", null],
  [14.9, "one", "two"],
  [19.8, "two", null],
  [19.9, "two", "lift table"],
  [60, "lift table", null],
  [14.9, null, "two"],
])("%f kg lifted by %s asks for %s", (liftKg, liftBy, needed) => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { model: null, liftKg, liftBy });
  expect(mends(liftAid, rows)).toEqual(needed === null ? [] : [`Arrays 7 Lift by: ${needed}`]);
});

test("says with how many a lift is to be done", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { liftKg: 14.9, liftBy: "one" });
  expect(found(liftAid, rows)).toEqual(["Arrays 7 Lift by: bi-array-1 is lifted with 14.9 kg to its place, which asks for two people; it is planned by one. Write two."]);
});

test("lifts an array as heavy as it is where its drives travel in it", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { model: null, liftKg: 14.8, weightKg: 19.9, liftBy: "one" });
  expect(cells(liftAid, rows)).toEqual([]);
  rows.jobs.find(({ site }) => site === "Bindery")!.drivesTravel = "in";
  expect(mends(liftAid, rows)).toContain("Arrays 7 Lift by: lift table");
  rows.jobs.find(({ site }) => site === "Bindery")!.state = "closed";
  expect(cells(liftAid, rows)).toEqual([]);
});

test("asks for a lift table above 175 cm, whatever the weight", () => {
  const rows = sample();
  // Unit 39: 10 + 38 x 4.445 = 178.9 cm; unit 38 is 174.5 cm.
  Object.assign(rows.arrays[2]!, { bottomUnit: 39, liftKg: 5, liftBy: "two" });
  expect(cells(liftAid, rows)).toEqual(["Arrays 7 Lift by"]);
  rows.arrays[2]!.bottomUnit = 38;
  expect(cells(liftAid, rows)).toEqual([]);
});

test("takes the full weight where the weight as lifted is not known, and says nothing without a place", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { model: null, liftKg: null, weightKg: 29, liftBy: "two" });
  Object.assign(rows.arrays[3]!, { bottomUnit: null, liftBy: null });
  expect(found(liftAid, rows)).toEqual(["Arrays 7 Lift by: bi-array-1 is lifted with 29 kg to its place, which asks for a lift table; it is planned by two. Write lift table."]);
});

test("follows the settings", () => {
  const rows = sample();
  set(rows, "Lift reach cm", "25");
  Object.assign(rows.arrays[2]!, { liftKg: 20.7, liftBy: "one" });
  expect(cells(liftAid, rows)).toEqual([]);
});

test("says so where nobody is planned to lift", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { model: null, liftKg: 10, liftBy: null });
  expect(found(liftAid, rows)).toEqual(["Arrays 7 Lift by: bi-array-1 is lifted with 10 kg to its place, which asks for one person; nobody is planned. Write one."]);
  rows.arrays[2]!.liftKg = 60;
  expect(found(liftAid, rows)).toEqual(["Arrays 7 Lift by: bi-array-1 is lifted with 60 kg to its place, which asks for a lift table; nobody is planned. Write lift table."]);
});

test("says nothing where neither weight is known, or the rack is not", () => {
  const rows = sample();
  Object.assign(rows.arrays[2]!, { model: null, liftKg: null, weightKg: null, liftBy: null });
  Object.assign(rows.arrays[3]!, { rack: null, liftBy: null });
  expect(cells(liftAid, rows)).toEqual([]);
});

test("asks for a lift table where the lift begins above the height for hands", () => {
  const rows = sample();
  set(rows, "Lift from cm", "176");
  Object.assign(rows.arrays[2]!, { liftKg: 5, liftBy: "two" });
  for (const array of rows.arrays) if (array !== rows.arrays[2]) array.bottomUnit = null;
  expect(cells(liftAid, rows)).toEqual(["Arrays 7 Lift by"]);
});
