import { poolOfOtherCluster } from "../../../../../src/planning/checks/rules/capacity/pool-of-other-cluster";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array, and a drive set, in a pool of another cluster, and an array of none", () => {
  const rows = sample();
  rows.arrays[5]!.pool = "Scans";
  rows.arrays.push({ array: "loose", site: "Bindery", pool: "Scans" }, { array: "two-sets", site: "Bindery", cluster: "Deep Store" });
  rows.driveSets = [{ array: "two-sets", set: "fast", drives: 4, driveSize: "4 TB", scheme: "RAID 10", pool: "Scans" }];
  expect(found(poolOfOtherCluster, rows)).toEqual([
    "Arrays 10 Pool: Scans is a pool of cluster Scans; cs-array-2 is in Deep Store. Name a pool of its cluster, or mend the cluster.",
    "Arrays 11 Pool: Scans is a pool of cluster Scans; loose is in none. Name a pool of its cluster, or mend the cluster.",
    "Drive sets 5 Pool: Scans is a pool of cluster Scans; two-sets is in Deep Store. Name a pool of its cluster, or mend the cluster.",
  ]);
});

test("takes a pool of no cluster", () => {
  const rows = sample();
  rows.pools[0]!.cluster = null;
  expect(cells(poolOfOtherCluster, rows)).toEqual([]);
});
