import { networkOrBroadcast } from "../../../../../src/planning/checks/rules/addresses/network-or-broadcast";
import { cells, found, sample } from "../../../../support/plan-rows";

test.each([
  ["the network's own address", 0, "10.64.11.0", "the network's own address"],
  ["the broadcast address", 0, "10.64.11.255", "the broadcast address"],
  ["the anycast address of the routers in IPv6", 25, "fd6b:41c2:9e07:31::", "the routers' anycast address"],
])("finds %s on a port (RFC 950, RFC 919 section 7, RFC 4291 section 2.6.1)", (_, port, address, kind) => {
  const rows = sample();
  rows.ports[port]!.address = address;
  expect(found(networkOrBroadcast, rows)).toEqual([expect.stringContaining(`is ${kind} of`)]);
});

test("finds it as a shared address and on a host", () => {
  const rows = sample();
  rows.clusters[1]!.sharedAddress = "10.64.0.255";
  rows.hosts[1]!.address = "10.64.21.0";
  expect(cells(networkOrBroadcast, rows)).toEqual(["Clusters 6 Shared address", "Hosts 6 Address"]);
});

test("takes both addresses of a /31 (RFC 3021 section 2.1) and the last of an IPv6 network (RFC 4291 section 2: no broadcast)", () => {
  const rows = sample();
  rows.networks[0]!.prefix = "10.64.11.0/31";
  rows.ports[0]!.address = "10.64.11.0";
  rows.ports[25]!.address = "fd6b:41c2:9e07:31:ffff:ffff:ffff:ffff";
  expect(cells(networkOrBroadcast, rows)).toEqual([]);
});
