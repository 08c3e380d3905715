import { portWithoutSwitch } from "../../../../../src/planning/checks/rules/resilience/port-without-switch";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a port that is cabled nowhere", () => {
  const rows = sample();
  rows.ports[0]!.switch = null;
  expect(cells(portWithoutSwitch, rows)).toEqual(["Ports 5 Switch"]);
});

test("asks nothing at a site that has no switches", () => {
  const rows = sample();
  rows.ports[0]!.switch = null;
  rows.switches = rows.switches.filter(({ site }) => site !== "Reading Room");
  expect(cells(portWithoutSwitch, rows)).toEqual([]);
});
