import { sidesOnOneSwitch } from "../../../../../src/planning/checks/rules/intent/sides-on-one-switch";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds the switch on which networks of both sides meet, once", () => {
  const rows = sample();
  for (const row of rows.switches) row.side = null;
  for (const at of [24, 26]) Object.assign(rows.ports[at]!, { switch: "cs-sw1", switchPort: String(at) });
  expect(found(sidesOnOneSwitch, rows)).toEqual(["Ports 31 Switch: cs-data-2 (side B) and cs-data-1 are both cabled to cs-sw1: its loss takes both sides. Use two switches."]);
});

test("takes sides that are apart, networks without sides, and a switch with a side, of which another rule tells", () => {
  const rows = sample();
  expect(cells(sidesOnOneSwitch, rows)).toEqual([]);
  Object.assign(rows.ports[26]!, { switch: "cs-sw1", switchPort: "9" });
  expect(cells(sidesOnOneSwitch, rows)).toEqual([]);
});
