import { sharedAddressOnPort } from "../../../../../src/planning/checks/rules/addresses/shared-address-on-port";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a shared address that a port has", () => {
  const rows = sample();
  rows.clusters[0]!.sharedAddress = "10.64.0.13";
  expect(found(sharedAddressOnPort, rows)).toEqual(["Clusters 5 Shared address: 10.64.0.13 is the address of rr-array-2 port B/2 too. A shared address sits on no port: write a free one."]);
});

test("takes one that only another cluster has", () => {
  const rows = sample();
  rows.clusters[0]!.sharedAddress = "10.64.0.251";
  expect(cells(sharedAddressOnPort, rows)).toEqual([]);
});

test("finds it where neither the cluster nor the port is on a network", () => {
  const rows = sample();
  Object.assign(rows.clusters[0]!, { network: null, sharedAddress: "10.99.0.1" });
  Object.assign(rows.ports[0]!, { network: null, address: "10.99.0.1" });
  expect(cells(sharedAddressOnPort, rows)).toEqual(["Clusters 5 Shared address"]);
});

test("tells routing tables apart", () => {
  const rows = sample();
  Object.assign(rows.clusters[0]!, { network: "lab", sharedAddress: "10.64.0.13" });
  rows.networks.push({ network: "lab", prefix: "10.64.0.0/24", routing: "lab" });
  expect(cells(sharedAddressOnPort, rows)).toEqual([]);
  rows.ports[11]!.network = "lab";
  expect(cells(sharedAddressOnPort, rows)).toEqual(["Clusters 5 Shared address"]);
});
