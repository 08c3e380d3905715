import { addressOutsideNetwork } from "../../../../../src/planning/checks/rules/addresses/address-outside-network";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a port whose address is not in the network it names", () => {
  const rows = sample();
  rows.ports[0]!.address = "10.64.12.77";
  expect(found(addressOutsideNetwork, rows)).toEqual(["Ports 5 Address: 10.64.12.77 is not in rr-data-1 (10.64.11.0/24). Write an address of it, or another network."]);
});

test("takes the last address of the network, and a port that names none", () => {
  const rows = sample();
  rows.ports[0]!.address = "10.64.11.254";
  Object.assign(rows.ports[1]!, { network: null, address: "10.99.0.1" });
  expect(cells(addressOutsideNetwork, rows)).toEqual([]);
});
