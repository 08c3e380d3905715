import { portWithoutRow } from "../../../../../src/planning/checks/rules/addresses/port-without-row";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array whose ports are not all in the Ports table, once an array", () => {
  const rows = sample();
  rows.arrays[0]!.ports = "0,1,2,3,4";
  rows.ports = rows.ports.filter(({ array }) => array !== "cs-array-2");
  expect(found(portWithoutRow, rows)).toEqual([
    "Arrays 5 Ports: Port A/3 of rr-array-1 and 3 more have no row in Ports for rr-data-1. Choose Assign addresses.",
    "Arrays 10 Ports: Port A/0 of cs-array-2 and 11 more have no row in Ports for cs-data-1. Choose Assign addresses.",
  ]);
});

test("takes rows of a port on another network than its turn", () => {
  const rows = sample();
  Object.assign(rows.ports[0]!, { network: "rr-data-2", address: "10.64.12.99" });
  expect(cells(portWithoutRow, rows)).toEqual([]);
});

test("says of one port alone that it has no row", () => {
  const rows = sample();
  const [first] = rows.ports.filter(({ array }) => array === "cs-array-2");
  rows.ports = rows.ports.filter((row) => row !== first);
  expect(found(portWithoutRow, rows)).toEqual([
    "Arrays 10 Ports: Port A/0 of cs-array-2 has no row in Ports for cs-data-1. Choose Assign addresses.",
  ]);
});
