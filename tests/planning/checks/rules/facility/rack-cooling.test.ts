import { rackCooling } from "../../../../../src/planning/checks/rules/facility/rack-cooling";
import { cells, found, sample } from "../../../../support/plan-rows";

// CS-R1: two arrays of 620 W and two switches of 120 W.
test("finds a rack that gives off more heat than is taken away", () => {
  const rows = sample();
  rows.racks[4]!.coolingW = 1479;
  expect(found(rackCooling, rows)).toEqual(["Racks 9 Cooling W: CS-R1 holds 1480 W of heat, its cooling takes 1479 W. Move some of it or add cooling."]);
});

test("takes just enough cooling", () => {
  const rows = sample();
  rows.racks[4]!.coolingW = 1480;
  expect(cells(rackCooling, rows)).toEqual([]);
});
