import { repeatedName } from "../../../../../src/planning/checks/rules/references/repeated-name";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

test.each([
  ["a rack", (rows: EditableRows) => (rows.racks[1]!.rack = "rr-r1"), "Racks 6 Rack"],
  ["an array id", (rows: EditableRows) => (rows.arrays[3]!.id = "A0001"), "Arrays 8 Id"],
  ["a job", (rows: EditableRows) => (rows.jobs[2]!.job = "Bindery installation"), "Jobs 7 Job"],
  ["a setting", (rows: EditableRows) => (rows.settings[1]!.setting = "Spares an array"), "Settings 6 Setting"],
  ["a host named like a switch", (rows: EditableRows) => (rows.hosts[0]!.host = "rr-sw1"), "Hosts 5 Host"],
  ["an array named like a host", (rows: EditableRows) => (rows.arrays[0]!.array = "scan-1"), "Arrays 5 Array"],
])("finds %s that stands twice", (_, change, cell) => {
  const rows = sample();
  change(rows);
  expect(cells(repeatedName, rows)).toEqual([cell]);
});

test("finds a section that stands twice in one procedure, not one of the same name in another", () => {
  const rows = sample();
  rows.procedures = [
    { procedure: "Install", section: "Lift", forEach: "array" },
    { procedure: "Remove", section: "Lift", forEach: "array" },
    { procedure: "Install", section: "lift", forEach: "array" },
  ];
  expect(found(repeatedName, rows)).toEqual(['Procedures 7 Section: Section "lift" of "Install" stands in row 5 already, so its steps would run twice.']);
});

test("says of a host and of an array whose name theirs is too", () => {
  const rows = sample();
  rows.hosts[0]!.host = "rr-sw1";
  rows.arrays[0]!.array = "scan-2";
  rows.arrays[1]!.array = "rr-sw2";
  expect(found(repeatedName, rows)).toEqual([
    'Hosts 5 Host: "rr-sw1" is the name of a switch too, so its links cannot be told apart. Rename one.',
    'Arrays 5 Array: "scan-2" is the name of a host too, so its links cannot be told apart. Rename one.',
    'Arrays 6 Array: "rr-sw2" is the name of a switch too, so its links cannot be told apart. Rename one.',
  ]);
});

test("says of a shelf that stands twice at one array, and takes one of its name at another", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1" }, { array: "rr-array-2", shelf: "S1" }, { array: "rr-array-1", shelf: "s1" }];
  expect(found(repeatedName, rows)).toEqual(['Shelves 7 Shelf: Shelf "s1" of "rr-array-1" stands in row 5 already. Give each its own name.']);
});

test("says of a model that stands twice", () => {
  const rows = sample();
  rows.models = [{ model: "Alder 24" }, { model: "ALDER 24" }];
  expect(found(repeatedName, rows)).toEqual(['Models 6 Model: "ALDER 24" stands in row 5 of Models already. Give each its own.']);
});

test("says of a port that stands twice at one model, and takes one of every controller beside one of a controller", () => {
  const rows = sample();
  rows.modelPorts.push({ model: "Alder 24", controller: "B", port: "0", role: "data" }, { model: "alder 24", port: "2", role: "data" });
  expect(found(repeatedName, rows)).toEqual(['Model ports 12 Port: Port 2 of "alder 24" stands in row 7 already, which is what counts. Keep one.']);
});

test("finds a group of hosts that is called like a host, which alone would open its volumes", () => {
  const rows = sample();
  rows.hosts[2]!.groups = "archive, Scan-2";
  expect(found(repeatedName, rows)).toEqual(['Hosts 7 Groups: Group "scan-2" is the name of a host too, which alone would open the volumes of the group. Rename one.']);
  rows.hosts[2]!.groups = "archive";
  expect(found(repeatedName, rows)).toEqual([]);
});
