import { volumeOutOfReach } from "../../../../../src/planning/checks/rules/intent/volume-out-of-reach";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a host at a site without an array of the pool", () => {
  const rows = sample();
  rows.access[2]!.to = "scan-1";
  expect(found(volumeOutOfReach, rows)).toEqual([
    "Access 7 Host or group: No array of Masters is at Reading Room, where scan-1 is: whether it reaches masters is not checked. Open it to a host there, or make sure.",
  ]);
});

test("takes hosts of two sites where the pool has arrays at both, and a pool without arrays", () => {
  const rows = sample();
  rows.pools.push({ pool: "Empty" });
  rows.volumes.push({ volume: "later", pool: "Empty", size: "1 TB" });
  rows.access.push({ volume: "later", to: "archive-1" });
  expect(cells(volumeOutOfReach, rows)).toEqual([]);
});
