import { switchPortTwice } from "../../../../../src/planning/checks/rules/resilience/switch-port-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds two cables in one port of a switch", () => {
  const rows = sample();
  rows.ports[2]!.switchPort = "1";
  expect(found(switchPortTwice, rows)).toEqual(["Ports 7 Switch port: Port 1 of rr-sw1 is taken by rr-array-1 port A/0, in row 5. Choose a free one."]);
});

test("takes both address families of one port, and the same number on another switch", () => {
  expect(cells(switchPortTwice, sample())).toEqual([]);
});

test("tells port 11 of controller 1 from port 1 of controller 11", () => {
  const rows = sample();
  rows.ports = [
    { array: "rr-array-1", controller: "1", port: "11", switch: "rr-sw1", switchPort: "1" },
    { array: "rr-array-1", controller: "11", port: "1", switch: "rr-sw1", switchPort: "1" },
  ];
  expect(cells(switchPortTwice, rows)).toEqual(["Ports 6 Switch port"]);
});

test("says nothing of ports that name no switch, or no port of it", () => {
  const rows = sample();
  Object.assign(rows.ports[0]!, { switchPort: null });
  Object.assign(rows.ports[2]!, { switchPort: null });
  Object.assign(rows.ports[1]!, { switch: null, switchPort: "9" });
  Object.assign(rows.ports[6]!, { switch: null, switchPort: "9" });
  expect(cells(switchPortTwice, rows)).toEqual([]);
});
