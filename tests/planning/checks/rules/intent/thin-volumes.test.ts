import { thinVolumes } from "../../../../../src/planning/checks/rules/intent/thin-volumes";
import { cells, found, sampleWithSmallPool } from "../../../../support/plan-rows";

test("says how many times as much a pool promises as it has, until the limit that another rule tells of", () => {
  const rows = sampleWithSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "40 TB", provisioning: "thin", snapshotShare: 0.2 });
  expect(found(thinVolumes, rows)).toEqual(["Pools 7 Pool: The volumes of Trials promise 48 TB, 1.5 times what it gives to hosts. Watch how far they are filled."]);
  rows.volumes[3]!.size = "60 TB";
  expect(cells(thinVolumes, rows)).toEqual([]);
});

test("is silent of volumes that all fit, and of full ones", () => {
  const rows = sampleWithSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "32 TB", provisioning: "thin" });
  expect(cells(thinVolumes, rows)).toEqual([]);
  Object.assign(rows.volumes[3]!, { size: "50 TB", provisioning: "full" });
  expect(cells(thinVolumes, rows)).toEqual([]);
});
