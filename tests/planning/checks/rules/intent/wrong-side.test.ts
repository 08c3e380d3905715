import { wrongSide } from "../../../../../src/planning/checks/rules/intent/wrong-side";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a port of side A on a switch of side B", () => {
  const rows = sample();
  Object.assign(rows.ports[24]!, { switch: "cs-sw2", switchPort: "9" });
  expect(found(wrongSide, rows)).toEqual(["Ports 29 Switch: cs-array-1 port A/0 is in cs-data-1 (side A), cs-sw2 is of side B. Cable it to one of side A."]);
});

test("takes a management port, which has no side, and a switch without one", () => {
  const rows = sample();
  expect(cells(wrongSide, rows)).toEqual([]);
  rows.switches[5]!.side = null;
  Object.assign(rows.ports[24]!, { switch: "cs-sw2", switchPort: "9" });
  expect(cells(wrongSide, rows)).toEqual([]);
});
