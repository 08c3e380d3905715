import { addressOfServer } from "../../../../../src/planning/checks/rules/intent/address-of-server";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a port and a cluster at the address of a server, however it is spelt", () => {
  const rows = sample();
  rows.ports[2]!.address = "10.64.0.5";
  rows.clusters[0]!.sharedAddress = "10.64.0.99";
  rows.sites[1]!.alertsTo = "storage-alerts@thornmere.example, 10.64.0.99";
  expect(found(addressOfServer, rows)).toEqual([
    "Ports 7 Address: 10.64.0.5 of rr-array-1 port A/2 is a name server of Cold Store. Give it another address.",
    "Clusters 5 Shared address: 10.64.0.99 of cluster Scans is a receiver of alerts of Bindery. Give it another address.",
  ]);
});

test("takes a host that is the server itself, the address next to it, and one of another routing table", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.64.0.5";
  rows.ports[2]!.address = "10.64.0.7";
  expect(cells(addressOfServer, rows)).toEqual([]);
  rows.networks.push({ network: "lab", site: "Bindery", prefix: "10.64.0.0/24", routing: "lab" });
  Object.assign(rows.ports[14]!, { network: "lab", address: "10.64.0.5" });
  expect(cells(addressOfServer, rows)).toEqual([]);
});
