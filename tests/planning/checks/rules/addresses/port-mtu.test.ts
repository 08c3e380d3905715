import { portMtu } from "../../../../../src/planning/checks/rules/addresses/port-mtu";
import { cells, mends, sample } from "../../../../support/plan-rows";

test("finds a port whose MTU is not its network's, and writes that", () => {
  const rows = sample();
  rows.ports[0]!.mtu = 1500;
  rows.networks[6]!.mtu = null;
  rows.ports[2]!.mtu = 9000;
  expect(cells(portMtu, rows)).toEqual(["Ports 5 MTU", "Ports 7 MTU"]);
  expect(mends(portMtu, rows)).toEqual(["Ports 5 MTU: 9000", "Ports 7 MTU: 1500"]);
});

test("takes a port without an MTU of its own", () => {
  const rows = sample();
  rows.ports[0]!.mtu = null;
  expect(cells(portMtu, rows)).toEqual([]);
});
