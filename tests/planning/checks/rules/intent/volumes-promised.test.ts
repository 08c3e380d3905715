import { volumesPromised } from "../../../../../src/planning/checks/rules/intent/volumes-promised";
import { cells, found, sampleWithSmallPool, set } from "../../../../support/plan-rows";

test("finds thin volumes that promise more than the limit, full ones counted with them", () => {
  const rows = sampleWithSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "60 TB", provisioning: "thin" }, { volume: "b", pool: "Trials", size: "4 TB", provisioning: "full" });
  expect(cells(volumesPromised, rows)).toEqual([]);
  rows.volumes[4]!.size = "8 TB";
  expect(found(volumesPromised, rows)).toEqual(["Pools 7 Pool: The volumes of Trials promise 68 TB, 2.13 times what it gives to hosts; 2 is the limit. Add capacity."]);
  set(rows, "Promised limit", "3");
  expect(cells(volumesPromised, rows)).toEqual([]);
});

test("finds a pool that promises more than it has where nobody is told before it is full", () => {
  const rows = sampleWithSmallPool();
  rows.volumes.push({ volume: "a", pool: "Trials", size: "33 TB", provisioning: "thin" });
  rows.sites[1]!.alertsTo = null;
  expect(found(volumesPromised, rows)).toEqual([
    "Pools 7 Pool: The volumes of Trials promise 33 TB, 1.03 times what it gives to hosts, and nobody is told before it is full. Fill Alerts to of Bindery.",
  ]);
  rows.volumes[3]!.size = "32 TB";
  expect(cells(volumesPromised, rows)).toEqual([]);
});
