import { singlePoint } from "../../../../../src/planning/checks/rules/resilience/single-point";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

// host: sw3, sw4; both joined to the switches of the array by one switch between, rr-core.
function overOneCore(): EditableRows {
  const rows = sample();
  for (const name of ["rr-sw3", "rr-sw4", "rr-core"]) rows.switches.push({ switch: name, site: "Reading Room", networks: "rr-data-1" });
  rows.links = [
    ...rows.links.filter(({ from }) => from !== "scan-1" && from !== "rr-sw1"),
    ...[["scan-1", "rr-sw3"], ["scan-1", "rr-sw4"], ["rr-sw3", "rr-core"], ["rr-sw4", "rr-core"], ["rr-core", "rr-sw1"], ["rr-core", "rr-sw2"]].map(([from, to]) => ({ from: from!, to: to! })),
  ];
  return rows;
}

test("finds a switch whose loss alone parts arrays from a host", () => {
  expect(found(singlePoint, overOneCore())).toEqual([
    "Arrays 5 Array: Loss of rr-core alone parts rr-array-1 from scan-1. Add a way around it.",
    "Arrays 6 Array: Loss of rr-core alone parts rr-array-2 from scan-1. Add a way around it.",
  ]);
});

test("says it once for an array and names the count of hosts", () => {
  const rows = overOneCore();
  rows.hosts.push({ host: "scan-7", site: "Reading Room" });
  rows.links.push({ from: "scan-7", to: "rr-sw3" }, { from: "scan-7", to: "rr-sw4" });
  expect(found(singlePoint, rows)[0]).toContain("from scan-1 and 1 more");
});

test("takes a second way around it", () => {
  const rows = overOneCore();
  rows.links.push({ from: "rr-sw3", to: "rr-sw1" });
  expect(cells(singlePoint, rows)).toEqual([]);
});

test("finds the link between two halves", () => {
  const rows = overOneCore();
  rows.switches.push({ switch: "rr-core2", site: "Reading Room", networks: "rr-data-1" });
  rows.links = rows.links.map((row) => (row.from === "rr-core" ? { ...row, from: "rr-core2" } : row));
  rows.links.push({ from: "rr-core", to: "rr-core2" });
  expect(found(singlePoint, rows).filter((line) => line.startsWith("Arrays 5"))).toEqual([
    expect.stringContaining("Loss of rr-core2 alone"),
    expect.stringContaining("Loss of rr-core - rr-core2 alone"),
    expect.stringContaining("Loss of rr-core alone"),
  ]);
});

test("finds the only controller that is cabled of two", () => {
  const rows = sample();
  for (const row of rows.ports) if (row.array === "rr-array-1" && row.controller === "B") row.switch = null;
  expect(found(singlePoint, rows)).toEqual(["Arrays 5 Array: Loss of controller A alone parts rr-array-1 from scan-1. Add a way around it."]);
});

test("does not let another host, or another array, pass anything on", () => {
  const rows = overOneCore();
  rows.hosts.push({ host: "scan-8", site: "Reading Room" });
  rows.links.push({ from: "scan-8", to: "rr-sw1" }, { from: "scan-8", to: "rr-sw3" });
  expect(cells(singlePoint, rows)).toEqual(["Arrays 5 Array", "Arrays 6 Array"]);
});

test("leaves arrays and hosts on one switch to rules of their own", () => {
  const rows = sample();
  rows.links.splice(1, 1);
  for (const row of rows.ports) if (row.array === "bi-array-1") row.switch = "bi-sw1";
  expect(cells(singlePoint, rows)).toEqual([]);
});

test("takes a switch that stands on two of three ways of a host", () => {
  const rows = overOneCore();
  rows.links.push({ from: "scan-1", to: "rr-sw1" });
  expect(cells(singlePoint, rows)).toEqual([]);
});
