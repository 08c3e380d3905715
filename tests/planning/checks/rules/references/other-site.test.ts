import { otherSite } from "../../../../../src/planning/checks/rules/references/other-site";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

test.each([
  ["the rack of an array", (rows: EditableRows) => (rows.arrays[0]!.rack = "BI-R1"), "Arrays 5 Rack"],
  ["the first feed of an array", (rows: EditableRows) => (rows.arrays[0]!.feedA = "BI-A"), "Arrays 5 Feed A"],
  ["the second feed of an array", (rows: EditableRows) => (rows.arrays[0]!.feedB = "CS-B/L2"), "Arrays 5 Feed B"],
  ["the rack of a switch", (rows: EditableRows) => (rows.switches[0]!.rack = "BI-R1"), "Switches 5 Rack"],
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

test("says where it is and where the row is", () => {
  const rows = sample();
  rows.arrays[0]!.rack = "BI-R1";
  expect(found(otherSite, rows)).toEqual(['Arrays 5 Rack: "BI-R1" is at "Bindery", this row at "Reading Room". Name one of the same site.']);
});

test("takes what is at no site, a row of no site, and a site in other letters", () => {
  const rows = sample();
  rows.racks[0]!.site = null;
  rows.racks[1]!.site = "READING ROOM";
  rows.networks[0]!.site = "reading room";
  Object.assign(rows.arrays[2]!, { site: null, rack: "RR-R2" });
  expect(cells(otherSite, rows)).toEqual([]);
});

test("looks where the shelf of an array is, at the site of its array", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", rack: "BI-R1", feedA: "RR-A", feedB: "BI-B" }, { array: "rr-array-9", shelf: "S1", rack: "BI-R1" }];
  expect(cells(otherSite, rows)).toEqual(["Shelves 5 Rack", "Shelves 5 Feed B"]);
});

test("finds a link of a host to a switch of another site; switches of two sites may be linked", () => {
  const rows = sample();
  rows.links.push({ from: "bi-sw1", to: "scan-1" }, { from: "rr-sw1", to: "bi-sw1" });
  expect(cells(otherSite, rows)).toEqual(["Links 14 From"]);
});
