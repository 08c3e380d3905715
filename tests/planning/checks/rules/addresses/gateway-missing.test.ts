import { gatewayMissing } from "../../../../../src/planning/checks/rules/addresses/gateway-missing";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a network of a shared address without a gateway, once", () => {
  const rows = sample();
  rows.networks[6]!.gateway = "none";
  expect(found(gatewayMissing, rows)).toEqual(["Networks 11 Gateway: mgmt has no gateway, so the shared address of Scans is reached from inside it only. Write its gateway."]);
});

test("finds that a host outside the networks of its site has no way to the arrays", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.70.0.9";
  rows.networks[6]!.site = "Bindery";
  expect(cells(gatewayMissing, rows)).toEqual(["Networks 5 Gateway"]);
});

test("takes such a host where a network with array ports has a gateway", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.70.0.9";
  expect(cells(gatewayMissing, rows)).toEqual([]);
});

test("says which host has no way, and asks once for the gateway that all such hosts need", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.70.0.9";
  rows.hosts.push({ host: "scan-3", site: "Reading Room", address: "10.70.0.10" });
  rows.networks[6]!.site = "Bindery";
  expect(found(gatewayMissing, rows)).toEqual([
    "Networks 5 Gateway: scan-1 (10.70.0.9) is in no network of Reading Room, and none with array ports has a gateway to it. Write one.",
  ]);
});

test("asks nothing for a host without an address or a site, nor where the site has no network of its family or none with array ports", () => {
  const rows = sample();
  rows.networks[6]!.site = "Bindery";
  for (const host of [{ address: null }, { address: "10.70.0.9", site: null }, { address: "fd6b:41c2:9e07:99::1" }]) {
    Object.assign(rows.hosts[0]!, { site: "Reading Room" }, host);
    expect(cells(gatewayMissing, rows)).toEqual([]);
  }
  rows.hosts[0]!.address = "10.70.0.9";
  rows.ports = [];
  expect(cells(gatewayMissing, rows)).toEqual([]);
});

test("asks for no gateway for a cluster without a shared address", () => {
  const rows = sample();
  rows.networks[6]!.gateway = "none";
  for (const cluster of rows.clusters) cluster.sharedAddress = null;
  expect(cells(gatewayMissing, rows)).toEqual([]);
});
