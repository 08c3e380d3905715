import { gatewayOutside } from "../../../../../src/planning/checks/rules/addresses/gateway-outside";
import { cells, sample } from "../../../../support/plan-rows";

test.each([["outside the network", "10.65.0.1"], ["the broadcast address", "10.64.0.255"], ["of the other family", "fe80::1"]])("finds a gateway that is %s", (_, gateway) => {
  const rows = sample();
  rows.networks[6]!.gateway = gateway;
  expect(cells(gatewayOutside, rows)).toEqual(["Networks 11 Gateway"]);
});

test("takes a link-local gateway in IPv6, from which a router advertises itself (RFC 4861 section 4.2)", () => {
  const rows = sample();
  rows.networks[9]!.gateway = "fe80::1";
  expect(cells(gatewayOutside, rows)).toEqual([]);
});
