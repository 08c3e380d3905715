import { notAnAddress } from "../../../../../src/planning/checks/rules/addresses/not-an-address";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

test.each([
  ["a prefix with host bits set", (rows: EditableRows) => (rows.networks[0]!.prefix = "10.64.11.1/24"), "Networks 5 Prefix"],
  ["a gateway", (rows: EditableRows) => (rows.networks[6]!.gateway = "10.64.0.256"), "Networks 11 Gateway"],
  ["a reserved range that runs backwards", (rows: EditableRows) => (rows.networks[6]!.reserved = "10.64.0.9-10.64.0.2"), "Networks 11 Reserved"],
  ["the address of a port", (rows: EditableRows) => (rows.ports[0]!.address = "10.64.11.01"), "Ports 5 Address"],
  ["a shared address", (rows: EditableRows) => (rows.clusters[0]!.sharedAddress = "10.64.0"), "Clusters 5 Shared address"],
  ["the address of a host", (rows: EditableRows) => (rows.hosts[0]!.address = "scan-1"), "Hosts 5 Address"],
])("finds %s", (_, change, cell) => {
  const rows = sample();
  change(rows);
  expect(cells(notAnAddress, rows)).toEqual([cell]);
  // The sentence begins with the header of the cell.
  const header = cell.replace(/^\w+ \d+ /, "");
  expect(found(notAnAddress, rows)[0]!.startsWith(`${cell}: ${header} "`)).toBe(true);
});

test("takes blanks, no gateway, and IPv6 in any spelling", () => {
  const rows = sample();
  rows.networks[0]!.gateway = "None";
  rows.ports[0]!.address = null;
  rows.ports[25]!.address = "FD6B:41C2:9E07:31:0:0:0:1";
  expect(cells(notAnAddress, rows)).toEqual([]);
});

test("takes a network without a prefix and without a gateway, and a cluster and a host without an address", () => {
  const rows = sample();
  Object.assign(rows.networks[0]!, { prefix: null, gateway: null, reserved: null });
  rows.clusters[0]!.sharedAddress = null;
  rows.hosts[0]!.address = null;
  expect(cells(notAnAddress, rows)).toEqual([]);
});

// RFC 1123 section 2.1: what looks like dotted decimals is an address, as the last label of a name is not numeric.
test("finds a server whose address cannot be read, and takes names", () => {
  const rows = sample();
  rows.sites[0]!.timeServers = "10.64.0.5, 10.64.0.555";
  rows.sites[1]!.nameServers = "fd00::12345";
  rows.sites[2]!.alertsTo = "10.64.0";
  expect(cells(notAnAddress, rows)).toEqual(["Sites 5 Time servers", "Sites 6 Name servers", "Sites 7 Alerts to"]);
  rows.sites[0]!.timeServers = "ntp1.thornmere.example, 2.pool.thornmere.example";
  rows.sites[1]!.nameServers = "fd00::1234, 10.64.0.6";
  rows.sites[2]!.alertsTo = "https://alerts.thornmere.example:8443, beef.cafe";
  expect(cells(notAnAddress, rows)).toEqual([]);
});
