import { numberAsText } from "../../../../../src/planning/checks/rules/references/number-as-text";
import { cells, mends, sample } from "../../../../support/plan-rows";

test("finds digits that are text where a number belongs, and writes the number", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { drives: "24", watts: " 620 " });
  expect(cells(numberAsText, rows)).toEqual(["Arrays 5 Watts", "Arrays 5 Drives"]);
  expect(mends(numberAsText, rows)).toEqual(["Arrays 5 Watts: 620", "Arrays 5 Drives: 24"]);
});

test("takes numbers, and digits in text columns", () => {
  const rows = sample();
  rows.arrays[0]!.controllers = "2";
  expect(cells(numberAsText, rows)).toEqual([]);
});
