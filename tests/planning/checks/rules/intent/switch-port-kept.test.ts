import { switchPortKept } from "../../../../../src/planning/checks/rules/intent/switch-port-kept";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a cable in a port that is kept, by name or range", () => {
  const rows = sample();
  rows.ports[0]!.switchPort = "23";
  rows.switches[1]!.keptPorts = "20-22";
  rows.ports[1]!.switchPort = "21";
  expect(found(switchPortKept, rows)).toEqual([
    "Ports 5 Switch port: Port 23 of rr-sw1 is kept by its column Kept ports. Choose another, or free it there.",
    "Ports 6 Switch port: Port 21 of rr-sw2 is kept by its column Kept ports. Choose another, or free it there.",
  ]);
});

test("takes the port next to it, and says where kept ports cannot be read", () => {
  const rows = sample();
  rows.ports[0]!.switchPort = "22";
  expect(cells(switchPortKept, rows)).toEqual([]);
  rows.switches[0]!.keptPorts = "24-23";
  expect(cells(switchPortKept, rows)).toEqual(["Switches 5 Kept ports"]);
});

test("says where a kept port is none of the switch, and where a run lacks one of its ends: else what is meant would stay free", () => {
  const rows = sample();
  rows.switches[0]!.keptPorts = "24, 48";
  rows.switches[1]!.keptPorts = "23-";
  rows.switches[2]!.keptPorts = "x1";
  rows.switches[2]!.ports = null;
  expect(found(switchPortKept, rows)).toEqual([
    "Switches 5 Kept ports: rr-sw1 keeps port 48, which it does not have: what is meant stays free. Write one of its ports.",
    'Switches 6 Kept ports: Kept ports "23-" cannot be read. Write 23, 24 or 23-24.',
  ]);
});
