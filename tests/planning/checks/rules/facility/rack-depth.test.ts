import { rackDepth } from "../../../../../src/planning/checks/rules/facility/rack-depth";
import { cells, sample } from "../../../../support/plan-rows";

test("finds an array that is deeper than its rack", () => {
  const rows = sample();
  rows.arrays[0]!.depthMm = 1001;
  expect(cells(rackDepth, rows)).toEqual(["Arrays 5 Depth mm"]);
});

test("takes one as deep as the rack, and depths that are not known", () => {
  const rows = sample();
  rows.arrays[0]!.depthMm = 1000;
  rows.racks[2]!.depthMm = null;
  expect(cells(rackDepth, rows)).toEqual([]);
});
