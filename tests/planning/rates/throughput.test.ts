import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { megabytesPerSecond, share } from "../../../src/planning/quantity";
import { streamRate, type ArrayState } from "../../../src/planning/rates";
import { problemOf } from "../../support/sentence";

const rate = (scheme: string, drives: number, reads: number, state: ArrayState = "healthy", more: { ceiling?: number; rebuild?: number; spares?: number } = {}) =>
  streamRate(layoutDrives(parseScheme(scheme, "scheme"), drives, more.spares ?? 0), megabytesPerSecond(200), {
    readShare: share(reads),
    state,
    ceiling: more.ceiling === undefined ? null : megabytesPerSecond(more.ceiling),
    rebuildShare: share(more.rebuild ?? 0.3),
  });

test.each<[string, number, number, ArrayState, number]>([
  ["none", 8, 1, "healthy", 1600],
  ["none", 8, 0, "healthy", 1600],
  ["RAID 10", 8, 1, "healthy", 1600],
  ["RAID 10", 8, 0, "healthy", 800],
  // The pair that lost a drive reads from one; the others wait for it.
  ["RAID 10", 8, 1, "degraded", 800],
  ["RAID 10", 8, 0, "degraded", 800],
  ["RAID 1", 2, 0, "healthy", 200],
  ["RAID 6", 12, 1, "degraded", 2200],
  ["RAID 6", 12, 0, "degraded", 2000],
  ["RAID 60 8+2", 25, 1, "healthy", 4000],
  ["RAID 60 8+2", 25, 1, "degraded", 3600],
  ["8+2", 24, 1, "healthy", 4800],
  ["8+2", 24, 0, "healthy", 3840],
  ["8+2", 24, 1, "degraded", 4600],
  ["8+2", 24, 0, "degraded", 3680],
  ["8+2", 10, 1, "degraded", 1800],
  ["8+2", 10, 0, "degraded", 1600],
  ["3 copies", 9, 0, "healthy", 600],
  ["RAID 6", 12, 1, "rebuilding", 1540],
])("%s on %i drives of 200 MB/s, reads %p, %s: %p MB/s", (scheme, drives, reads, state, expected) => {
  expect(rate(scheme, drives, reads, state)).toBeCloseTo(expected, 9);
});

test("spares and drives outside a group do no work", () => {
  expect(rate("RAID 60 8+2", 24, 1, "healthy", { spares: 4 })).toBeCloseTo(4000, 9);
});

test("reads and writes share the drives' time: half each at 2400 and 1200 MB/s is 1600, their harmonic mean", () => {
  expect(rate("2 copies", 12, 0.5)).toBeCloseTo(1600, 9);
});

test("the ceiling comes last, and a rebuild that takes everything leaves nothing", () => {
  expect(rate("RAID 6", 12, 1, "healthy", { ceiling: 1000 })).toBe(1000);
  expect(rate("RAID 6", 12, 1, "rebuilding", { ceiling: 1600 })).toBeCloseTo(1540, 9);
  expect(rate("RAID 6", 12, 1, "healthy", { ceiling: 3000 })).toBeCloseTo(2400, 9);
  expect(rate("RAID 6", 12, 1, "rebuilding", { rebuild: 1 })).toBe(0);
});

test("without redundancy nothing is left to read once a drive is out: no answer", () => {
  expect(problemOf(() => rate("none", 4, 1, "degraded"))).toMatchObject({
    kind: "no-answer",
    argument: "state",
    sentence: 'state "degraded" has a drive out, and scheme none does not survive that. Give a scheme with redundancy, or "healthy".',
  });
});
