import { controllerOnOneSwitch } from "../../../../../src/planning/checks/rules/resilience/controller-on-one-switch";
import { cells, found, sample } from "../../../../support/plan-rows";

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

test("passes over ports without a cable, and says what to do", () => {
  const rows = sample();
  for (const row of rows.ports.slice(3, 6)) row.switch = "rr-sw2";
  rows.ports[4]!.switch = null;
  expect(found(controllerOnOneSwitch, rows)).toEqual(["Ports 8 Switch: All cabled ports of controller B of rr-array-1 go to rr-sw2. Cable one of them to another switch."]);
});
