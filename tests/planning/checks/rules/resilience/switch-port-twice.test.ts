import { switchPortTwice } from "../../../../../src/planning/checks/rules/resilience/switch-port-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds two cables in one port of a switch", () => {
  const rows = sample();
  rows.ports[2]!.switchPort = "1";
  expect(found(switchPortTwice, rows)).toEqual(["Ports 7 Switch port: Port 1 of rr-sw1 is taken by row 5. Choose a free one."]);
});

test("takes both address families of one port, and the same number on another switch", () => {
  expect(cells(switchPortTwice, sample())).toEqual([]);
});
