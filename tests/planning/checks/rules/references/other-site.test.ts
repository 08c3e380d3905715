import { otherSite } from "../../../../../src/planning/checks/rules/references/other-site";
import { cells, sample, type EditableRows } from "../../../../support/plan-rows";

test.each([
  ["the rack of an array", (rows: EditableRows) => (rows.arrays[0]!.rack = "BI-R1"), "Arrays 5 Rack"],
  ["a feed of a switch", (rows: EditableRows) => (rows.switches[0]!.feedB = "CS-B/L1"), "Switches 5 Feed B"],
  ["the switch of a port", (rows: EditableRows) => (rows.ports[0]!.switch = "bi-sw1"), "Ports 5 Switch"],
  ["the network of a port", (rows: EditableRows) => (rows.ports[0]!.network = "bi-data-1"), "Ports 5 Network"],
  ["a network of a switch", (rows: EditableRows) => (rows.switches[0]!.networks = "mgmt, bi-data-1"), "Switches 5 Networks"],
  ["an array of a job", (rows: EditableRows) => (rows.jobs[0]!.arrays = "rr-array-1, bi-array-1"), "Jobs 5 Arrays"],
])("finds %s at another site", (_, change, cell) => {
  const rows = sample();
  change(rows);
  expect(cells(otherSite, rows)).toEqual([cell]);
});

test("takes a network that reaches every site", () => {
  const rows = sample();
  rows.switches[0]!.networks = "mgmt";
  expect(cells(otherSite, rows)).toEqual([]);
});
