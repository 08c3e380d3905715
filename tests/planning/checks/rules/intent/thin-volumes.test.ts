import { thinVolumes } from "../../../../../src/planning/checks/rules/intent/thin-volumes";
import { cells, found, sample } from "../../../../support/plan-rows";

/** The sample with a pool of 32 TB: ten drives of 4 TB under RAID 6. */
function withSmallPool() {
  const rows = sample();
  rows.pools.push({ pool: "Trials", acrossArrays: "none" });
  rows.arrays.push({ array: "trial", site: "Bindery", drives: 10, driveSize: "4 TB", scheme: "RAID 6", spares: 0, pool: "Trials" });
  return rows;
}

test("says how many times as much a pool promises as it has, until the limit that another rule tells of", () => {
  const rows = withSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "40 TB", provisioning: "thin", snapshotShare: 0.2 });
  expect(found(thinVolumes, rows)).toEqual(["Pools 7 Pool: The volumes of Trials promise 48 TB, 1.5 times what it gives to hosts. Watch how far they are filled."]);
  rows.volumes[3]!.size = "60 TB";
  expect(cells(thinVolumes, rows)).toEqual([]);
});

test("is silent of volumes that all fit, and of full ones", () => {
  const rows = withSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "32 TB", provisioning: "thin" });
  expect(cells(thinVolumes, rows)).toEqual([]);
  Object.assign(rows.volumes[3]!, { size: "50 TB", provisioning: "full" });
  expect(cells(thinVolumes, rows)).toEqual([]);
});
