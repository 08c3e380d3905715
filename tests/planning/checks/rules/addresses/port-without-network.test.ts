import { portWithoutNetwork } from "../../../../../src/planning/checks/rules/addresses/port-without-network";
import { cells, mends, sample } from "../../../../support/plan-rows";

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
