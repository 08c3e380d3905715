import { firstOfCluster } from "../../../../../src/planning/checks/rules/addresses/first-of-cluster";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a new cluster that no array creates", () => {
  const rows = sample();
  rows.arrays[4]!.clusterOrder = 3;
  expect(cells(firstOfCluster, rows)).toEqual(["Clusters 6 Cluster"]);
});

test("finds a second array that would create it", () => {
  const rows = sample();
  rows.arrays[3]!.clusterOrder = 1;
  expect(found(firstOfCluster, rows)).toEqual(["Arrays 8 Cluster order: bi-array-2 would create Scans after rr-array-1 did. Write 2 or more: it joins."]);
});

test("asks nothing of a cluster that exists", () => {
  const rows = sample();
  rows.arrays[4]!.clusterOrder = 3;
  rows.clusters[1]!.state = "existing";
  expect(cells(firstOfCluster, rows)).toEqual([]);
});

test("says what to write where no array creates it, and nothing of a cluster without a name", () => {
  const rows = sample();
  rows.arrays[4]!.clusterOrder = 3;
  expect(found(firstOfCluster, rows)).toEqual(["Clusters 6 Cluster: No array creates the new cluster Deep Store. Write Cluster order 1 at the one that is installed first."]);
  rows.clusters[1]!.cluster = null;
  expect(cells(firstOfCluster, rows)).toEqual([]);
});
