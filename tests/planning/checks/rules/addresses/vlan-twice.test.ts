import { vlanTwice } from "../../../../../src/planning/checks/rules/addresses/vlan-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds the second IPv4 network of a VLAN at a site, and one that reaches every site", () => {
  const rows = sample();
  rows.networks[1]!.vlan = 111;
  rows.networks[2]!.vlan = 100;
  expect(found(vlanTwice, rows)).toEqual([
    "Networks 6 VLAN: VLAN 111 of rr-data-2 is that of rr-data-1 already: both would be one network. Give each its own.",
    "Networks 11 VLAN: VLAN 100 of mgmt is that of bi-data-1 already: both would be one network. Give each its own.",
  ]);
});

test("takes a network of each address family, networks of two sites, of two sides, and on switches apart", () => {
  const rows = sample();
  rows.networks[2]!.vlan = 111;
  rows.networks[5]!.vlan = 131;
  rows.networks[1]!.vlan = 111;
  rows.switches[0]!.networks = "rr-data-1, mgmt";
  rows.switches[1]!.networks = "rr-data-2, mgmt";
  expect(cells(vlanTwice, rows)).toEqual([]);
  // Of the same side they would meet.
  Object.assign(rows.networks[5]!, { side: "A" });
  expect(cells(vlanTwice, rows)).toEqual(["Networks 10 VLAN"]);
});
