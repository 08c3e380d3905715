import { portWithoutNetwork } from "../../../../../src/planning/checks/rules/addresses/port-without-network";
import { cells, found, mends, sample } from "../../../../support/plan-rows";

test("finds a port without a network, and writes the one that holds its address", () => {
  const rows = sample();
  rows.ports[1]!.network = null;
  expect(cells(portWithoutNetwork, rows)).toEqual(["Ports 6 Network"]);
  expect(mends(portWithoutNetwork, rows)).toEqual(["Ports 6 Network: rr-data-2"]);
});

test("has no mend where no network of the site holds the address", () => {
  const rows = sample();
  Object.assign(rows.ports[1]!, { network: null, address: "10.64.21.200" });
  expect(cells(portWithoutNetwork, rows)).toEqual(["Ports 6 Network"]);
  expect(mends(portWithoutNetwork, rows)).toEqual([]);
});

test("leaves a row without an address to another rule", () => {
  const rows = sample();
  Object.assign(rows.ports[1]!, { network: null, address: null });
  expect(cells(portWithoutNetwork, rows)).toEqual([]);
});

test("says which network it is, or that it is none, also of a port whose array has no row", () => {
  const rows = sample();
  rows.ports[1]!.network = null;
  Object.assign(rows.ports[2]!, { network: null, address: "10.64.21.200" });
  Object.assign(rows.ports[3]!, { network: null, array: "attic-array" });
  const none = (address: string): string => `This port has no network, and ${address} is in none of its site. Write the network, and an address of it.`;
  expect(found(portWithoutNetwork, rows)).toEqual([
    "Ports 6 Network: This port has no network; 10.64.12.1 is in rr-data-2. Write that.",
    `Ports 7 Network: ${none("10.64.21.200")}`,
    `Ports 8 Network: ${none("10.64.11.2")}`,
  ]);
});
