import { volumesBeyondPool } from "../../../../../src/planning/checks/rules/intent/volumes-beyond-pool";
import { cells, found, sample, sampleWithSmallPool } from "../../../../support/plan-rows";

// Two copies over four arrays: hosts have half of what the smallest and largest of them hold together.
test("finds full volumes that take more with their snapshots than hosts have of the pool", () => {
  const rows = sample();
  Object.assign(rows.volumes[0]!, { size: "200 TB", snapshotShare: 0.5 });
  expect(found(volumesBeyondPool, rows)).toEqual([
    expect.stringMatching(/^Pools 5 Pool: Full volumes of Scans take 306 TB with their snapshots, and hosts have [\d.]+ TB\. Make them smaller or thin, or add capacity\.$/),
  ]);
});

test("takes a full volume that fits to the byte, and thin ones of any size", () => {
  const rows = sampleWithSmallPool();
  rows.volumes.push({ volume: "all-of-it", pool: "Trials", size: "32 TB" }, { volume: "more", pool: "Trials", size: "900 TB", provisioning: "thin" });
  expect(cells(volumesBeyondPool, rows)).toEqual([]);
  rows.volumes[3]!.size = "32.000000000001 TB";
  expect(cells(volumesBeyondPool, rows)).toEqual(["Pools 7 Pool"]);
});
