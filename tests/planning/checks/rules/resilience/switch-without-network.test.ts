import { switchWithoutNetwork } from "../../../../../src/planning/checks/rules/resilience/switch-without-network";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a port on a switch that does not carry its network", () => {
  const rows = sample();
  rows.switches[0]!.networks = "rr-data-1, mgmt";
  expect(cells(switchWithoutNetwork, rows)).toEqual(["Ports 9 Switch", "Ports 15 Switch"]);
});

test("takes networks in any case and order, and a port without a network", () => {
  const rows = sample();
  rows.switches[0]!.networks = "MGMT, RR-data-2 ,rr-data-1";
  rows.ports[0]!.network = null;
  expect(cells(switchWithoutNetwork, rows)).toEqual([]);
});
