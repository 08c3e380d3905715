import { repeatedStep } from "../../../../../src/planning/checks/rules/procedure/repeated-step";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a step id that stands twice, whatever the procedure", () => {
  const rows = sample();
  rows.steps[9]!.stepId = String(rows.steps[2]!.stepId).toLowerCase();
  expect(cells(repeatedStep, rows)).toEqual(["Steps 14 Step id"]);
});

test("takes the built-in procedures as they are", () => {
  expect(cells(repeatedStep, sample())).toEqual([]);
});
