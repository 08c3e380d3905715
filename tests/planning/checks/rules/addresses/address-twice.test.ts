import { addressTwice } from "../../../../../src/planning/checks/rules/addresses/address-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an address on two ports, on a port and a host, and on two clusters, however it is spelt", () => {
  const rows = sample();
  rows.ports[3]!.address = "10.64.11.1";
  rows.hosts[2]!.address = "FD6B:41C2:9E07:31:0:0:0:1";
  rows.clusters[1]!.sharedAddress = "10.64.0.250";
  expect(found(addressTwice, rows)).toEqual([
    "Ports 8 Address: 10.64.11.1 of rr-array-1 port B/0 is used by rr-array-1 port A/0 already, in row 5 of Ports. Give each its own.",
    "Clusters 6 Shared address: 10.64.0.250 of cluster Deep Store is used by cluster Scans already, in row 5 of Clusters. Give each its own.",
    "Hosts 7 Address: fd6b:41c2:9e07:31::1 of host archive-1 is used by cs-array-1 port A/0 already, in row 30 of Ports. Give each its own.",
  ]);
});

test("counts one address on the same port number of an array that shares ports as one use", () => {
  expect(cells(addressTwice, sample())).toEqual([]);
  const rows = sample();
  rows.arrays[4]!.portSharing = "controller";
  expect(cells(addressTwice, rows).length).toBe(6);
});

test("finds a row that stands twice even on an array that shares ports", () => {
  const rows = sample();
  rows.ports.push({ ...rows.ports[24]! });
  expect(cells(addressTwice, rows)).toEqual(["Ports 53 Address"]);
});

test("takes the same address in another routing table", () => {
  const rows = sample();
  rows.networks.push({ network: "lab", site: "Reading Room", prefix: "10.64.11.0/24", gateway: "none", routing: "lab" });
  Object.assign(rows.ports[3]!, { network: "lab", address: "10.64.11.1" });
  expect(cells(addressTwice, rows)).toEqual([]);
});
