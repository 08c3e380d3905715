import { portRowTwice } from "../../../../../src/planning/checks/rules/addresses/port-row-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a second row of a port of an array, and of a host, in one network", () => {
  const rows = sample();
  rows.ports.push({ ...rows.ports[0]!, address: "10.64.11.9" });
  const card = { host: "scan-1", card: "c1", network: "rr-data-1", switch: "rr-sw1", switchPort: "20" };
  rows.hostPorts = [{ ...card, address: "10.64.11.65" }, { ...card, address: "10.64.11.66" }];
  expect(found(portRowTwice, rows)).toEqual([
    "Ports 53 Network: rr-array-1 port A/0 is in rr-data-1 by row 5 already. Keep one of the two rows, or write the other port or network.",
    "Host ports 6 Network: scan-1 port c1 is in rr-data-1 by row 5 already. Keep one of the two rows, or write the other port or network.",
  ]);
});

test("takes a port in networks of both families, and hosts whose rows name no card", () => {
  const rows = sample();
  rows.hostPorts = [{ host: "scan-1", network: "rr-data-1", address: "10.64.11.65" }, { host: "scan-1", network: "rr-data-1", address: "10.64.11.66" }];
  expect(cells(portRowTwice, rows)).toEqual([]);
});
