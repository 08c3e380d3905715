import { hostPortsDiffer } from "../../../../../src/planning/checks/rules/intent/host-ports-differ";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

/** The sample with both ports of scan-1 in Host ports, as its row in Hosts and its links say. */
function withPorts(): EditableRows {
  const rows = sample();
  const initiatorName = "iqn.2024-05.example.thornmere:scan-1";
  rows.hostPorts = [
    { host: "scan-1", card: "1", initiatorName, network: "rr-data-1", address: "10.64.11.65", mtu: 9000, switch: "rr-sw1", switchPort: "11" },
    { host: "scan-1", card: "2", network: "rr-data-2", address: "10.64.12.65", mtu: 9000, switch: "rr-sw2", switchPort: "11" },
  ];
  return rows;
}

test("takes a host whose row says what its ports say, and one that leaves addresses, name and links to them", () => {
  expect(cells(hostPortsDiffer, withPorts())).toEqual([]);
  const rows = withPorts();
  Object.assign(rows.hosts[0]!, { address: null, initiatorName: null });
  rows.links = rows.links.filter(({ from }) => from !== "scan-1");
  expect(cells(hostPortsDiffer, rows)).toEqual([]);
});

test("takes an address of IPv6 in another spelling (RFC 5952 section 2)", () => {
  const rows = sample();
  rows.hostPorts = [
    { host: "archive-1", address: "FD6B:41C2:9E07:0031:0:0:0:0041" },
    { host: "archive-1", address: "fd6b:41c2:9e07:32::41" },
  ];
  expect(cells(hostPortsDiffer, rows)).toEqual([]);
});

test("finds an address that only Hosts has, and one that only Host ports has", () => {
  const rows = withPorts();
  rows.hostPorts[1]!.address = "10.64.12.66";
  expect(found(hostPortsDiffer, rows)).toEqual(["Hosts 5 Address: 10.64.12.65 is in no row of scan-1 in Host ports, which are what counts. Add it there, or take it out here."]);
  rows.hosts[0]!.address = "10.64.11.65";
  expect(found(hostPortsDiffer, rows)).toEqual(["Hosts 5 Address: 10.64.12.66 of scan-1 in Host ports is not here. Write all of its addresses, or none."]);
});

test("finds an initiator name that no card has, where every card has its own", () => {
  const rows = withPorts();
  for (const row of rows.hostPorts) row.initiatorName = "iqn.2024-05.example.thornmere:other";
  expect(cells(hostPortsDiffer, rows)).toEqual(["Hosts 5 Initiator name"]);
});

test("finds a link to a switch at which no port is, once a port is cabled", () => {
  const rows = withPorts();
  rows.hostPorts[1]!.switch = "rr-sw1";
  expect(cells(hostPortsDiffer, rows)).toEqual(["Links 6 To"]);
  for (const row of rows.hostPorts) row.switch = null;
  expect(cells(hostPortsDiffer, rows)).toEqual([]);
});
