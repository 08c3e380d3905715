import { unusableRange } from "../../../../../src/planning/checks/rules/addresses/unusable-range";
import { cells, found, sample } from "../../../../support/plan-rows";

test.each([
  ["documentation", "192.0.2.0/24"],
  ["loopback", "127.0.0.0/24"],
  ["multicast", "239.1.1.0/24"],
  ["link-local", "169.254.4.0/24"],
  ["tests of equipment", "198.18.4.0/24"],
  ["documentation in IPv6", "2001:db8::/64"],
])("finds a network in the range for %s, once, not again for its ports", (_, prefix) => {
  const rows = sample();
  rows.networks[0]!.prefix = prefix;
  rows.ports[0]!.address = prefix.replace(/(0|::)\/\d+$/, (part) => (part.startsWith("0") ? "7" : "::7"));
  rows.hosts[0]!.address = null;
  expect(cells(unusableRange, rows)).toEqual(["Networks 5 Prefix"]);
});

test("finds an address set aside that lies in no network of its row", () => {
  const rows = sample();
  rows.hosts[0]!.address = "203.0.113.4";
  expect(found(unusableRange, rows)).toEqual(["Hosts 5 Address: 203.0.113.4 is set aside: Documentation (TEST-NET-3) (RFC 5737). No device can have it."]);
});

test.each([["10.0.0.0/24"], ["172.16.9.0/24"], ["192.168.1.0/24"], ["100.64.0.0/24"], ["fd00::/64"], ["8.8.8.0/24"]])("takes %s", (prefix) => {
  const rows = sample();
  rows.networks[0]!.prefix = prefix;
  expect(cells(unusableRange, rows)).toEqual([]);
});

test("says what a network is set aside for, and what to choose", () => {
  const rows = sample();
  rows.networks[0]!.prefix = "127.0.0.0/24";
  expect(found(unusableRange, rows)).toContain("Networks 5 Prefix: 127.0.0.0/24 is set aside: Loopback (RFC 1122 section 3.2.1.3). Choose a private range, such as one in 10.0.0.0/8.");
});
