import { controllerOnOneSwitch } from "../../../../../src/planning/checks/rules/resilience/controller-on-one-switch";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a controller whose ports all go to one switch", () => {
  const rows = sample();
  for (const row of rows.ports.slice(3, 6)) row.switch = "rr-sw2";
  expect(cells(controllerOnOneSwitch, rows)).toEqual(["Ports 8 Switch"]);
});

test("leaves the whole array on one switch to the rule of arrays", () => {
  const rows = sample();
  for (const row of rows.ports.slice(0, 6)) row.switch = "rr-sw2";
  expect(cells(controllerOnOneSwitch, rows)).toEqual([]);
});

test("asks nothing of a controller with one cable, be it of two address families", () => {
  const rows = sample();
  rows.ports = rows.ports.filter(({ array, controller, port }) => array !== "cs-array-1" || controller !== "B" || port === "0");
  expect(cells(controllerOnOneSwitch, rows)).toEqual([]);
});
