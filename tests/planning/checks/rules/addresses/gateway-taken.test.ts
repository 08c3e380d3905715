import { gatewayTaken } from "../../../../../src/planning/checks/rules/addresses/gateway-taken";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds the gateway's address on a port, a cluster or a host", () => {
  const rows = sample();
  rows.ports[2]!.address = "10.64.0.1";
  rows.clusters[0]!.sharedAddress = "10.64.0.1";
  rows.hosts[2]!.address = "fd6b:41c2:9e07:30:0::1";
  expect(cells(gatewayTaken, rows)).toEqual(["Ports 7 Address", "Clusters 5 Shared address", "Hosts 7 Address"]);
});

test("takes the address where it is a gateway in another routing table", () => {
  const rows = sample();
  rows.networks.push({ network: "lab", prefix: "10.64.11.0/24", gateway: "10.64.11.1", routing: "lab" });
  expect(cells(gatewayTaken, rows)).toEqual([]);
});

test("says whose gateway it is, also of a port in no network of its site", () => {
  const rows = sample();
  Object.assign(rows.ports[2]!, { network: null, address: "10.99.0.1" });
  rows.ports[5]!.address = "10.64.0.1";
  expect(found(gatewayTaken, rows)).toEqual(["Ports 10 Address: 10.64.0.1 of rr-array-1 port B/2 is the gateway of mgmt. Give it another address."]);
});
