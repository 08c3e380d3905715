import fc from "fast-check";
import { drivesFor, drivesInChassis, layoutDrives, parseScheme, usableBytes } from "../../../src/planning/capacity";
import { bytes, parseSize, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";
import { anyScheme } from "./schemes";

const need = (target: string | number, driveSize: string | number, spares = 0, reserve = 0, fill = 1) => ({
  target: parseSize(target, "target"),
  driveSize: parseSize(driveSize, "driveSize"),
  spares,
  reserve: share(reserve),
  fill: share(fill),
});

describe("the fewest drives for a target", () => {
  test.each<[string, number, number, number, number, number]>([
    ["RAID 6", 40, 0, 0, 1, 12],
    ["RAID 6", 40.1, 0, 0, 1, 13],
    ["RAID 6", 1, 0, 0, 1, 4],
    ["RAID 6", 40, 2, 0, 1, 14],
    ["RAID 6", 40, 0, 0.2, 1, 15],
    ["RAID 6", 40, 0, 0, 0.8, 15],
    ["RAID 60 8+2", 33, 1, 0, 1, 21],
    ["RAID 1", 4, 0, 0, 1, 2],
    ["8+2", 36, 0, 0, 1, 12],
    ["RAID 6", 8, 99_996, 0, 1, 100_000],
  ])("%s for %p TB on drives of 4 TB, %i spares, reserve %p, fill %p: %i", (scheme, target, spares, reserve, fill, drives) => {
    expect(drivesFor(parseScheme(scheme, "scheme"), need(target, 4, spares, reserve, fill))).toBe(drives);
  });

  test("reach it, and one drive fewer does not", () => {
    fc.assert(
      fc.property(
        anyScheme,
        fc.bigInt({ min: 1n, max: 10n ** 16n }),
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 0, max: 90 }),
        fc.integer({ min: 10, max: 100 }),
        (text, target, spares, reserve, fill) => {
          fc.pre(text !== "RAID 1" && text !== "mirror");
          const scheme = parseScheme(text, "scheme");
          const asked = { target: bytes(target), driveSize: parseSize(22, "driveSize"), spares, reserve: share(reserve / 100), fill: share(fill / 100) };
          const drives = drivesFor(scheme, asked);
          const reaches = (count: number): boolean =>
            usableBytes(layoutDrives(scheme, count, spares), asked.driveSize, asked.reserve) * BigInt(fill) >= target * 100n;
          expect(reaches(drives)).toBe(true);
          if (drives > scheme.leastDrives + spares) expect(reaches(drives - 1)).toBe(false);
        },
      ),
      { seed: 10, numRuns: 500 },
    );
  });
});

test.each<[string, number, number, string]>([
  ["mirror", 40, 0, "target 40 TB is out of reach of mirror with up to 4 drives. Write a smaller target or larger drives."],
  ["RAID 1", 5, 1, "target 5 TB is out of reach of RAID 1 with up to 4 drives. Write a smaller target or larger drives."],
  ["RAID 6", 1e6, 0, "target 1000000 TB is out of reach of RAID 6 with up to 100000 drives. Write a smaller target or larger drives."],
  ["RAID 6", 1, 100_000, "target 1 TB is out of reach of RAID 6 with up to 100000 drives. Write a smaller target or larger drives."],
])("%s cannot reach %p TB with %i spares: no answer", (scheme, target, spares, sentence) => {
  expect(problemOf(() => drivesFor(parseScheme(scheme, "scheme"), need(target, 4, spares)))).toMatchObject({ kind: "no-answer", argument: "target", sentence });
});

describe("whole chassis", () => {
  test.each<[string, number, number, number, number]>([
    // A chassis of 24 with 2 spares holds two groups of 8+2, 64 TB; drives that fill no group stay in it.
    ["RAID 60 8+2", 64, 2, 24, 24],
    ["RAID 60 8+2", 64.1, 2, 24, 48],
    ["RAID 60 8+2", 200, 2, 24, 96],
    // One group a chassis: 22 less 2 parity, 80 TB.
    ["RAID 6", 100, 2, 24, 48],
    ["8+2", 76.8, 0, 24, 24],
    ["8+2", 76.9, 0, 24, 48],
    ["RAID 10", 40, 1, 12, 24],
  ])("%s for %p TB on drives of 4 TB, %i spares a chassis of %i bays: %i", (scheme, target, spares, bays, drives) => {
    expect(drivesInChassis(parseScheme(scheme, "scheme"), need(target, 4, spares), bays)).toBe(drives);
  });

  test("reserve and fill count, spares once a chassis", () => {
    expect(drivesInChassis(parseScheme("RAID 6", "scheme"), need(32, 4, 0, 0.2, 1), 12)).toBe(12);
    expect(drivesInChassis(parseScheme("RAID 6", "scheme"), need(32, 4, 0, 0.2, 0.9), 12)).toBe(24);
  });

  test("bays in which the scheme finds no room, and a target out of reach, are told", () => {
    expect(problemOf(() => drivesInChassis(parseScheme("RAID 60 8+2", "scheme"), need(32, 4, 3), 12))).toMatchObject({
      kind: "invalid",
      sentence: "bays 12 less 3 spares is too few: RAID 60 8+2 needs at least 10. Write 13 or more.",
    });
    expect(problemOf(() => drivesInChassis(parseScheme("RAID 6", "scheme"), need(1e6, 4), 24))).toMatchObject({
      kind: "no-answer",
      sentence: "target 1000000 TB is out of reach of 4166 chassis of 24 bays. Write a smaller target or larger drives.",
    });
  });
});
