import { clusterWithoutAddress } from "../../../../../src/planning/checks/rules/addresses/cluster-without-address";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a cluster without a shared address", () => {
  const rows = sample();
  rows.clusters[1]!.sharedAddress = null;
  expect(cells(clusterWithoutAddress, rows)).toEqual(["Clusters 6 Shared address"]);
  expect(cells(clusterWithoutAddress, sample())).toEqual([]);
});
