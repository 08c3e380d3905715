import { clusterWithoutState } from "../../../../../src/planning/checks/rules/intent/cluster-without-state";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a cluster with arrays that does not say whether it is new", () => {
  const rows = sample();
  rows.clusters[0]!.state = null;
  expect(found(clusterWithoutState, rows)).toEqual(["Clusters 5 State: Whether rr-array-1 creates Scans or joins it is not known, and both empty drives. Write new or existing."]);
});

test("takes new and existing ones, and a cluster without arrays", () => {
  const rows = sample();
  rows.clusters[0]!.state = "existing";
  rows.clusters.push({ cluster: "later" });
  expect(cells(clusterWithoutState, rows)).toEqual([]);
});
