import { portCabledTwice } from "../../../../../src/planning/checks/rules/resilience/port-cabled-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a port whose rows name two ports of a switch, and one of a host on two switches", () => {
  const rows = sample();
  rows.ports[25]!.switchPort = "17";
  const card = { host: "scan-1", card: "c1" };
  rows.hostPorts = [{ ...card, network: "rr-data-1", switch: "rr-sw1", switchPort: "20" }, { ...card, network: "rr-data-2", switch: "rr-sw2", switchPort: "20" }];
  expect(found(portCabledTwice, rows)).toEqual([
    "Ports 30 Switch port: cs-array-1 port A/0 goes to cs-sw1 port 17 here, and to cs-sw1 port 1 by row 29. Write one end.",
    "Host ports 6 Switch port: scan-1 port c1 goes to rr-sw2 port 20 here, and to rr-sw1 port 20 by row 5. Write one end.",
  ]);
});

test("takes rows of one cable however the switch is spelt, and one that does not say its end yet", () => {
  const rows = sample();
  rows.ports[25]!.switch = "CS-SW1";
  rows.ports[27]!.switchPort = null;
  expect(cells(portCabledTwice, rows)).toEqual([]);
});
