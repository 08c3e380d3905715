import { sharedAddressOutside } from "../../../../../src/planning/checks/rules/addresses/shared-address-outside";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a shared address that is not in its cluster's network", () => {
  const rows = sample();
  rows.clusters[1]!.sharedAddress = "10.64.1.250";
  expect(cells(sharedAddressOutside, rows)).toEqual(["Clusters 6 Shared address"]);
});

test("takes any address of the network", () => {
  const rows = sample();
  rows.clusters[1]!.sharedAddress = "10.64.0.254";
  expect(cells(sharedAddressOutside, rows)).toEqual([]);
});
