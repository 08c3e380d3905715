import { clusterOrder } from "../../../../../src/planning/checks/rules/addresses/cluster-order";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds two arrays that join a new cluster as one, and one whose turn is blank", () => {
  const rows = sample();
  rows.arrays[2]!.clusterOrder = 2;
  rows.arrays[3]!.clusterOrder = null;
  expect(found(clusterOrder, rows)).toEqual([
    "Arrays 7 Cluster order: bi-array-1 joins Scans as number 2, and so does rr-array-2. Give each its own place.",
    "Arrays 8 Cluster order: When bi-array-2 joins Scans is blank. Write its place: 2, 3 ... behind the array that creates it.",
  ]);
});

test("takes a gap, two that would create it, which another rule tells, and a cluster that exists", () => {
  const rows = sample();
  rows.arrays[3]!.clusterOrder = 9;
  rows.arrays[5]!.clusterOrder = 1;
  expect(cells(clusterOrder, rows)).toEqual([]);
  rows.clusters[0]!.state = "existing";
  rows.arrays[2]!.clusterOrder = null;
  expect(cells(clusterOrder, rows)).toEqual([]);
});
