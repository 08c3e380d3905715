import { rackWeight } from "../../../../../src/planning/checks/rules/facility/rack-weight";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a rack whose arrays weigh more than it carries", () => {
  const rows = sample();
  rows.racks[4]!.limitKg = 91.9;
  expect(found(rackWeight, rows)).toEqual(["Racks 9 Limit kg: Arrays and shelves in CS-R1 weigh 92 kg, over its limit of 91.9 kg. Move some to another rack."]);
});

test("takes one that is just loaded", () => {
  const rows = sample();
  rows.racks[4]!.limitKg = 92;
  rows.racks[3]!.limitKg = null;
  expect(cells(rackWeight, rows)).toEqual([]);
});
