import { unknownName } from "../../../../../src/planning/checks/rules/references/unknown-name";
import { cells, found, mends, sample, workbookWith, type EditableRows } from "../../../../support/plan-rows";

test.each([
  ["a site", (rows: EditableRows) => (rows.racks[0]!.site = "Attic"), "Racks 5 Site"],
  ["a rack", (rows: EditableRows) => (rows.arrays[0]!.rack = "R9"), "Arrays 5 Rack"],
  ["a feed, phase aside", (rows: EditableRows) => (rows.switches[4]!.feedB = "CS-C/L1"), "Switches 9 Feed B"],
  ["a cluster", (rows: EditableRows) => (rows.pools[0]!.cluster = "Prints"), "Pools 5 Cluster"],
  ["a pool", (rows: EditableRows) => (rows.arrays[0]!.pool = "Prints"), "Arrays 5 Pool"],
  ["an array", (rows: EditableRows) => (rows.ports[0]!.array = "rr-array-9"), "Ports 5 Array"],
  ["a network among several", (rows: EditableRows) => (rows.switches[0]!.networks = "rr-data-1, rr-data-9, mgmt"), "Switches 5 Networks"],
  ["an array among several", (rows: EditableRows) => (rows.jobs[0]!.arrays = "rr-array-1, rr-array-7"), "Jobs 5 Arrays"],
  ["an end of a link", (rows: EditableRows) => (rows.links[0]!.to = "rr-sw9"), "Links 5 To"],
  ["a procedure", (rows: EditableRows) => (rows.jobs[0]!.procedure = "Move house"), "Jobs 5 Procedure"],
  ["what an offer is for", (rows: EditableRows) => (rows.quote[0]!.for = "Attic"), "Quote 5 For"],
])("finds %s that has no row", (_, change, cell) => {
  const rows = sample();
  change(rows);
  expect(cells(unknownName, rows)).toEqual([cell]);
});

test("finds a step whose section its procedure lacks", () => {
  const rows = sample();
  rows.steps[3]!.section = "Afterthoughts";
  expect(cells(unknownName, rows)).toEqual(["Steps 8 Section"]);
});

test("takes a name in another case, and one with a phase", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { rack: "rr-r1 ", feedA: "rr-a" });
  expect(cells(unknownName, rows)).toEqual([]);
});

test("says nothing about names of a table that is not there", () => {
  const { sheets } = workbookWith(sample());
  expect(cells(unknownName, { sheets: sheets.filter(({ name }) => name !== "Racks") })).toEqual([]);
});

test("mends a name that differs in marks alone, and leaves the rest of the cell", () => {
  const rows = sample();
  rows.arrays[0]!.rack = "RR R1";
  rows.switches[0]!.networks = "rr-data-1, rr_data_2, mgmt";
  rows.arrays[1]!.rack = "RR-R9";
  expect(mends(unknownName, rows)).toEqual(["Switches 5 Networks: rr-data-1, rr-data-2, mgmt", "Arrays 5 Rack: RR-R1"]);
});

test.each([
  ["a site", (rows: EditableRows) => (rows.racks[0]!.site = "Attic"), 'Racks 5 Site: Site "Attic" is not in the table Sites. Add it there, or mend the name.'],
  ["an end of a link", (rows: EditableRows) => (rows.links[0]!.to = "rr-sw9"), 'Links 5 To: "rr-sw9" is neither a switch nor a host. Add it to one of those tables, or mend the name.'],
  ["what an offer is for", (rows: EditableRows) => (rows.quote[0]!.for = "Attic"), 'Quote 5 For: "Attic" is neither an array nor a site, so it has no usable capacity. Mend the name.'],
  [
    "a section", (rows: EditableRows) => Object.assign(rows.steps[3]!, { procedure: "Site survey", section: "Afterthoughts" }),
    'Steps 8 Section: Section "Afterthoughts" is none of "Site survey", so the step never appears. Add it to Procedures.',
  ],
])("says of %s where it is missing and what to do", (_, change, sentence) => {
  const rows = sample();
  change(rows);
  expect(found(unknownName, rows)).toEqual([sentence]);
});

test("takes links that end at a host or a switch, or nowhere yet, as long as one of the two tables is there", () => {
  const rows = sample();
  rows.links[0]!.to = null;
  expect(cells(unknownName, rows)).toEqual([]);
  const { sheets } = workbookWith({ ...rows, links: [{ from: "rr-sw1", to: "gone" }] });
  expect(cells(unknownName, { sheets: sheets.filter(({ name }) => name !== "Hosts") })).toEqual(["Links 5 To"]);
  expect(cells(unknownName, { sheets: sheets.filter(({ name }) => name !== "Hosts" && name !== "Switches") })).toEqual([]);
});

test("takes a line of an offer that is for nothing in particular", () => {
  const rows = sample();
  rows.quote[0]!.for = null;
  expect(cells(unknownName, rows)).toEqual([]);
});

test("finds a drive in a shelf that its array does not have, also in a plan without the table Shelves, and an array that is none", () => {
  const rows = sample();
  rows.drives = [{ array: "rr-array-1", shelf: "S1", bay: 1 }, { array: "rr-array-1", bay: 1 }, { array: "rr-array-9", bay: 1 }];
  expect(found(unknownName, rows)).toEqual([
    'Drives 7 Array: Array "rr-array-9" is not in the table Arrays. Add it there, or mend the name.',
    'Drives 5 Shelf: Shelf "S1" of rr-array-1 is not in the table Shelves. Add it there, or mend the name.',
  ]);
  rows.drives.pop();
  rows.shelves = [{ array: "rr-array-2", shelf: "S1" }];
  expect(cells(unknownName, rows)).toEqual(["Drives 5 Shelf"]);
  rows.shelves.push({ array: "RR-array-1", shelf: "s1" });
  expect(cells(unknownName, rows)).toEqual([]);
});
