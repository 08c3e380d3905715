import { clusterWithoutPort } from "../../../../../src/planning/checks/rules/addresses/cluster-without-port";
import { cells, sample } from "../../../../support/plan-rows";

test("finds an array of a cluster that has no port in the cluster's network", () => {
  const rows = sample();
  rows.clusters[1]!.network = "cs-mgmt-v6";
  rows.clusters[0]!.network = "rr-data-2";
  expect(cells(clusterWithoutPort, rows)).toEqual(["Arrays 7 Cluster", "Arrays 8 Cluster"]);
});

test("says nothing of an array that has no ports at all yet", () => {
  const rows = sample();
  rows.ports = [];
  expect(cells(clusterWithoutPort, rows)).toEqual([]);
});
