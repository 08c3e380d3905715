import { portOfOtherRole } from "../../../../../src/planning/checks/rules/intent/port-of-other-role";
import { cells, found, sample } from "../../../../support/plan-rows";

test("stops a data port on a management network, and a management port on a data network, by what their model says", () => {
  const rows = sample();
  rows.ports[6]!.network = "mgmt";
  rows.ports[8]!.network = "rr-data-1";
  expect(found(portOfOtherRole, rows)).toEqual([
    "Ports 11 Network: rr-array-2 port A/0 is in mgmt (management); on Alder 24 it is for data. Name a network for that.",
    "Ports 13 Network: rr-array-2 port A/2 is in rr-data-1 (data); on Alder 24 it is for management. Name a network for that.",
  ]);
});

test("goes by the row of the controller before that of every controller", () => {
  const rows = sample();
  rows.modelPorts.push({ model: "alder 24", controller: "b", port: "0", role: "management" });
  expect(cells(portOfOtherRole, rows)).toEqual(["Ports 8 Network", "Ports 14 Network", "Ports 35 Network", "Ports 36 Network", "Ports 47 Network", "Ports 48 Network"]);
});

test("takes a network of several roles, one without a role, a port whose row says no role, and one without a row", () => {
  const rows = sample();
  rows.ports[6]!.network = "mgmt";
  rows.networks[6]!.role = "management, data";
  expect(cells(portOfOtherRole, rows)).toEqual([]);
  rows.networks[6]!.role = null;
  expect(cells(portOfOtherRole, rows)).toEqual([]);
  rows.networks[6]!.role = "management";
  rows.modelPorts[0]!.role = null;
  expect(cells(portOfOtherRole, rows)).toEqual([]);
  rows.modelPorts.shift();
  expect(cells(portOfOtherRole, rows)).toEqual([]);
});
