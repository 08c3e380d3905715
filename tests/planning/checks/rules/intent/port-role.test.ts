import { portRole } from "../../../../../src/planning/checks/rules/intent/port-role";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withoutModelPorts(): EditableRows {
  return { ...sample(), modelPorts: [] };
}

test("leaves a port of which its model says what it is for to the rule that holds it against that", () => {
  const rows = sample();
  rows.ports[6]!.network = "mgmt";
  expect(cells(portRole, rows)).toEqual([]);
});

test("finds a data port on a management network, and a management port on a data network, by the same port elsewhere", () => {
  const rows = withoutModelPorts();
  rows.ports[6]!.network = "mgmt";
  rows.ports[8]!.network = "rr-data-1";
  expect(cells(portRole, rows)).toEqual(["Ports 11 Network", "Ports 13 Network"]);
  expect(found(portRole, rows)[0]).toContain("Port A/0 of rr-array-2 is in mgmt (management); rr-array-1 port A/0 is for data. Mend one.");
});

test("takes another port of the same array, another model, another site, and a network without a role", () => {
  const rows = withoutModelPorts();
  rows.arrays[1]!.model = "Alder 24 S";
  for (const port of rows.ports.slice(6, 12)) port.network = port.port === "2" ? "rr-data-1" : "mgmt";
  expect(cells(portRole, rows)).toEqual([]);
  rows.networks[3]!.role = null;
  rows.ports[12]!.network = "bi-data-2";
  expect(cells(portRole, rows)).toEqual([]);
});
