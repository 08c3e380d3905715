import { networkTooSmall } from "../../../../../src/planning/checks/rules/addresses/network-too-small";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withoutServers(rows: EditableRows): void {
  for (const site of rows.sites) Object.assign(site, { timeServers: null, nameServers: null });
}

// mgmt: two ports of rr and bi arrays each, one of each cs array that shares, two clusters: 4 x 2 + 2 + 2 = 12 addresses.
test("finds a network without room for its ports and clusters beside gateway and what it keeps back", () => {
  const rows = sample();
  withoutServers(rows);
  Object.assign(rows.networks[6]!, { prefix: "10.64.0.0/28", reserved: "10.64.0.2-10.64.0.3" });
  for (const row of [...rows.ports, ...rows.clusters]) if (row.network === "mgmt") row["array" in row ? "address" : "sharedAddress"] = null;
  expect(found(networkTooSmall, rows)).toEqual(["Networks 11 Prefix: 10.64.0.0/28 of mgmt has 11 addresses to give, 12 are needed. Give it a larger prefix."]);
});

test("takes one that is just large enough", () => {
  const rows = sample();
  withoutServers(rows);
  Object.assign(rows.networks[6]!, { prefix: "10.64.0.0/28", reserved: "10.64.0.2" });
  for (const row of [...rows.ports, ...rows.clusters]) if (row.network === "mgmt") row["array" in row ? "address" : "sharedAddress"] = null;
  expect(cells(networkTooSmall, rows)).toEqual([]);
  rows.sites[0]!.timeServers = "10.64.0.7";
  expect(cells(networkTooSmall, rows)).toEqual(["Networks 11 Prefix"]);
});

test("counts ports that have no row yet", () => {
  const rows = sample();
  rows.ports = [];
  rows.hosts = [];
  Object.assign(rows.networks[1]!, { prefix: "10.64.12.0/30", reserved: null });
  expect(cells(networkTooSmall, rows)).toEqual(["Networks 6 Prefix"]);
  rows.networks[1]!.prefix = "10.64.12.0/29";
  expect(cells(networkTooSmall, rows)).toEqual([]);
});

test("writes one address as one", () => {
  const rows = sample();
  rows.networks.push({ network: "tiny", site: "Attic", prefix: "10.99.0.0/30", reserved: "10.99.0.1" });
  for (const port of ["0", "1"]) rows.ports.push({ array: "attic-array", controller: "A", port, network: "tiny" });
  expect(found(networkTooSmall, rows)).toEqual(["Networks 15 Prefix: 10.99.0.0/30 of tiny has 1 address to give, 2 are needed. Give it a larger prefix."]);
});

test("says nothing of a network without room in which nothing needs an address", () => {
  const rows = sample();
  rows.networks.push({ network: "kept", site: "Attic", prefix: "10.99.0.0/30", reserved: "10.99.0.0/30" });
  expect(cells(networkTooSmall, rows)).toEqual([]);
});

test("counts a port of an array that has no row of its own", () => {
  const rows = sample();
  rows.networks.push({ network: "tiny", site: "Attic", prefix: "10.99.0.0/30", reserved: "10.99.0.0/30" });
  rows.ports.push({ array: "attic-array", controller: "A", port: "0", network: "tiny" });
  expect(found(networkTooSmall, rows)).toEqual(["Networks 15 Prefix: 10.99.0.0/30 of tiny has 0 addresses to give, 1 is needed. Give it a larger prefix."]);
});
