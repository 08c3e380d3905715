import { tooFewSpares } from "../../../../../src/planning/checks/rules/capacity/too-few-spares";
import { cells, sample, set } from "../../../../support/plan-rows";

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
