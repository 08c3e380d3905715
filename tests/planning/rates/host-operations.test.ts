import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { share } from "../../../src/planning/quantity";
import { hostOperationsPerSecond } from "../../../src/planning/rates";
import { problemOf } from "../../support/sentence";

const iops = (scheme: string, drives: number, reads: number, spares = 0, hits = 0) =>
  hostOperationsPerSecond(layoutDrives(parseScheme(scheme, "scheme"), drives, spares), 150, share(reads), share(hits));

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

test.each<[string, number, number, number, number]>([
  // Chen and others 1994, table 1, from memory: a narrow group writes the whole stripe, so RAID 5 of three drives costs 3, not 4.
  ["RAID 5", 3, 0, 0, 150],
  ["RAID 6 2+2", 4, 0, 0, 150],
  // 60-digit arithmetic by the same definition.
  ["RAID 6", 12, 0.7, 0.3, 786.026200873362],
  // Half of the reads come from the cache: 8 drives of 150 answer twice as many.
  ["none", 8, 1, 0.5, 2400],
])("%s on %i drives of 150, reads %p, of which %p from the cache: %p a second", (scheme, drives, reads, hits, operations) => {
  expect(Math.abs(iops(scheme, drives, reads, 0, hits) / operations - 1)).toBeLessThan(1e-12);
});

test("nothing but reads, all of them from the cache: the drives set no limit, no answer", () => {
  expect(problemOf(() => iops("RAID 6", 12, 1, 0, 1))).toMatchObject({
    kind: "no-answer",
    argument: "cacheHits",
    sentence: "cacheHits is 100% of nothing but reads, so the drives set no limit. Write a share below 1, such as 90%.",
  });
});
