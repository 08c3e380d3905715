import { switchPortBeyond } from "../../../../../src/planning/checks/rules/intent/switch-port-beyond";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds port 99 and port 0 of a switch of 24, and a port that is in no list of names", () => {
  const rows = sample();
  rows.ports[0]!.switchPort = "99";
  rows.ports[2]!.switchPort = "0";
  rows.switches[1]!.ports = "1-12, x1";
  rows.ports[1]!.switchPort = "x2";
  expect(found(switchPortBeyond, rows)).toEqual([
    'Ports 5 Switch port: rr-sw1 has no port "99": its ports are 24. Write one of them.',
    'Ports 6 Switch port: rr-sw2 has no port "x2": its ports are 1-12, x1. Write one of them.',
    'Ports 7 Switch port: rr-sw1 has no port "0": its ports are 24. Write one of them.',
  ]);
});

test("takes the last port, a name of a list in other capitals, and any port of a switch that does not say", () => {
  const rows = sample();
  rows.ports[0]!.switchPort = "24";
  rows.switches[1]!.ports = "1-12, X1";
  rows.ports[1]!.switchPort = "x1";
  rows.switches[2]!.ports = null;
  rows.ports[12]!.switchPort = "99";
  expect(cells(switchPortBeyond, rows)).toEqual([]);
});

test("says so where the ports of a switch cannot be read", () => {
  const rows = sample();
  rows.switches[0]!.ports = "24-1";
  expect(cells(switchPortBeyond, rows)).toEqual(["Switches 5 Ports"]);
});
