import { arrayWithoutData } from "../../../../../src/planning/checks/rules/intent/array-without-data";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array whose ports are all in management networks", () => {
  const rows = sample();
  for (const port of rows.ports.slice(0, 6)) port.network = "mgmt";
  expect(found(arrayWithoutData, rows)).toEqual(["Arrays 5 Ports: No port of rr-array-1 is in a data network, so no host reaches its data. Give it one in rr-data-1."]);
});

test("takes one data port, a port whose network is not known, and no ports at all", () => {
  const rows = sample();
  for (const port of rows.ports.slice(1, 6)) port.network = "mgmt";
  for (const port of rows.ports.slice(6, 11)) port.network = "mgmt";
  rows.ports[11]!.network = null;
  rows.ports = rows.ports.filter(({ array }) => array !== "bi-array-1");
  expect(cells(arrayWithoutData, rows)).toEqual([]);
});
