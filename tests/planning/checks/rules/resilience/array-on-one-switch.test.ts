import { arrayOnOneSwitch } from "../../../../../src/planning/checks/rules/resilience/array-on-one-switch";
import { cells, sample } from "../../../../support/plan-rows";

test("finds an array all of whose cabled ports go to one switch", () => {
  const rows = sample();
  for (const row of rows.ports) if (row.array === "rr-array-1") row.switch = "rr-sw1";
  expect(cells(arrayOnOneSwitch, rows)).toEqual(["Arrays 5 Array"]);
});

test("takes one port on another switch, and an array that is not cabled yet", () => {
  const rows = sample();
  for (const row of rows.ports.slice(1, 6)) row.switch = "rr-sw1";
  rows.ports[0]!.switch = "rr-sw2";
  for (const row of rows.ports.slice(6, 12)) row.switch = null;
  expect(cells(arrayOnOneSwitch, rows)).toEqual([]);
});
