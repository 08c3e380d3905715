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
