import { tooFewSpares } from "../../../../../src/planning/checks/rules/capacity/too-few-spares";
import { cells, found, sample, set } from "../../../../support/plan-rows";

test("finds an array without a hot spare, or with fewer than the settings ask for", () => {
  const rows = sample();
  rows.arrays[4]!.spares = 0;
  expect(cells(tooFewSpares, rows)).toEqual(["Arrays 9 Spares"]);
  set(rows, "Spares an array", "2");
  expect(cells(tooFewSpares, rows)).toEqual(["Arrays 7 Spares", "Arrays 8 Spares", "Arrays 9 Spares", "Arrays 10 Spares"]);
});

test("asks no spare of an array without redundancy", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { scheme: "none", spares: 0 });
  expect(cells(tooFewSpares, rows)).toEqual([]);
});

test("says how many there are of how many", () => {
  const rows = sample();
  rows.arrays[4]!.spares = 0;
  const rest = "so a rebuild waits for somebody to bring a drive. Plan more spares.";
  expect(found(tooFewSpares, rows)).toEqual([`Arrays 9 Spares: cs-array-1 has no hot spare, ${rest}`]);
  rows.arrays[4]!.spares = 2;
  set(rows, "Spares an array", "3");
  expect(found(tooFewSpares, rows).slice(2, 5)).toEqual([
    `Arrays 7 Spares: bi-array-1 has 1 of the 3 hot spares asked for, ${rest}`,
    `Arrays 8 Spares: bi-array-2 has 1 of the 3 hot spares asked for, ${rest}`,
    `Arrays 9 Spares: cs-array-1 has 2 of the 3 hot spares asked for, ${rest}`,
  ]);
});
