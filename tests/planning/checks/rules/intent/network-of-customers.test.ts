import { addressTwice } from "../../../../../src/planning/checks/rules/addresses/address-twice";
import { networksOverlap } from "../../../../../src/planning/checks/rules/addresses/networks-overlap";
import { networkOfCustomers } from "../../../../../src/planning/checks/rules/intent/network-of-customers";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withTwoCustomers(): EditableRows {
  const rows = sample();
  rows.sites[1]!.customer = "Another library";
  return rows;
}

test("warns of a network of every site that names no routing table, once two customers are in the plan", () => {
  expect(cells(networkOfCustomers, sample())).toEqual([]);
  expect(found(networkOfCustomers, withTwoCustomers())).toEqual([
    "Networks 11 Routing: mgmt reaches the sites of Thornmere Map Library, Another library, and is held apart from none of their networks. Write its Site or its Routing.",
  ]);
  const rows = withTwoCustomers();
  rows.networks[6]!.routing = "provider";
  expect(cells(networkOfCustomers, rows)).toEqual([]);
});

test("two customers may use one range, two sites of one customer may not, and a routing table that is named is one for both", () => {
  const rows = withTwoCustomers();
  Object.assign(rows.networks[2]!, { prefix: "10.64.11.0/24" });
  rows.ports[12]!.address = "10.64.11.1";
  rows.ports[15]!.address = "10.64.11.9";
  expect([cells(networksOverlap, rows), cells(addressTwice, rows)]).toEqual([[], []]);
  rows.networks[0]!.routing = rows.networks[2]!.routing = "shared";
  expect([cells(networksOverlap, rows), cells(addressTwice, rows)]).toEqual([["Networks 7 Prefix"], ["Ports 17 Address"]]);
  rows.networks[0]!.routing = rows.networks[2]!.routing = null;
  rows.sites[1]!.customer = "thornmere map library";
  expect([cells(networksOverlap, rows), cells(addressTwice, rows)]).toEqual([["Networks 7 Prefix"], ["Ports 17 Address"]]);
});

test("an address outside every network of its site counts in the routing table of its customer", () => {
  const rows = withTwoCustomers();
  rows.hosts[0]!.address = "10.77.0.1";
  rows.hosts[1]!.address = "10.77.0.1";
  expect(cells(addressTwice, rows)).toEqual([]);
  rows.sites[1]!.customer = rows.sites[0]!.customer!;
  expect(cells(addressTwice, rows)).toEqual(["Hosts 6 Address"]);
});
