import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { share } from "../../../src/planning/quantity";
import { hostOperationsPerSecond } from "../../../src/planning/rates";

const iops = (scheme: string, drives: number, reads: number, spares = 0) =>
  hostOperationsPerSecond(layoutDrives(parseScheme(scheme, "scheme"), drives, spares), 150, share(reads));

test.each<[string, number, number, number, number]>([
  ["none", 8, 0.3, 0, 1200],
  ["RAID 10", 8, 1, 0, 1200],
  ["RAID 10", 8, 0, 0, 600],
  ["RAID 5", 8, 0, 0, 300],
  ["RAID 6", 8, 0, 0, 200],
  ["RAID 5", 9, 0, 1, 300],
  ["RAID 60 4+2", 14, 1, 0, 1800],
  ["mirror", 3, 0, 0, 150],
  ["RAID 5", 8, 0.7, 0, 12_000 / 19],
])("%s on %i drives of 150, reads %p, %i spares: %p a second", (scheme, drives, reads, spares, operations) => {
  expect(iops(scheme, drives, reads, spares)).toBeCloseTo(operations, 10);
});
