import fc from "fast-check";
import { breakDown, layoutDrives, parseScheme, usableBytes } from "../../../src/planning/capacity";
import { bytes, parseSize, share } from "../../../src/planning/quantity";
import { anyScheme } from "./schemes";

const usable = (scheme: string, drives: number, driveSize: string | number, spares = 0, reserve = 0): bigint =>
  usableBytes(layoutDrives(parseScheme(scheme, "scheme"), drives, spares), parseSize(driveSize, "driveSize"), share(reserve));

const terabyte = 10n ** 12n;

describe("usable capacity", () => {
  test.each<[string, number, number, number, bigint]>([
    ["none", 3, 0, 0, 12n],
    ["RAID 1", 3, 0, 0, 4n],
    ["mirror", 4, 0, 0, 4n],
    ["RAID 10", 9, 0, 0, 16n],
    ["2 copies", 9, 0, 0, 18n],
    ["RAID 5", 8, 0, 0, 28n],
    ["RAID 6", 12, 0, 0, 40n],
    ["triple parity", 12, 0, 0, 36n],
    ["RAID 50 4+1", 12, 0, 0, 32n],
    ["RAID 60 8+2", 24, 2, 0, 64n],
    ["8+2", 15, 0, 0, 48n],
    ["RAID 6", 12, 2, 0.25, 24n],
    ["RAID 6", 12, 0, 1, 0n],
  ])("%s of %i drives of 4 TB, %i spares, reserve %p: %p TB", (scheme, drives, spares, reserve, terabytes) => {
    expect(usable(scheme, drives, 4, spares, reserve)).toBe(terabytes * terabyte);
  });

  test("is rounded down to a whole byte", () => {
    expect(usable("3 copies", 4, "1 B")).toBe(1n);
    expect(usable("8+3", 13, "3.84 TB")).toBe((13n * 3_840_000_000_000n * 8n) / 11n);
    expect(usable("none", 1, "10 B", 0, 0.15)).toBe(8n);
  });

  test("takes a reserve of a tenth as a tenth, not as the nearest double", () => {
    expect(usable("none", 1, "10 EB", 0, 0.1)).toBe(9n * 10n ** 18n);
  });

  test("never grows when a drive becomes a spare", () => {
    fc.assert(
      fc.property(anyScheme, fc.integer({ min: 20, max: 100 }), fc.integer({ min: 0, max: 8 }), (text, drives, spares) => {
        fc.pre(text !== "RAID 1" && text !== "mirror");
        expect(usable(text, drives, 3.84, spares + 1, 0.1)).toBeLessThanOrEqual(usable(text, drives, 3.84, spares, 0.1));
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

describe("a breakdown", () => {
  test("shows each part", () => {
    const layout = layoutDrives(parseScheme("RAID 60 8+2", "scheme"), 24, 2);
    expect(breakDown(layout, parseSize(4, "driveSize"), share(0.1))).toEqual({
      raw: 96n * terabyte,
      spares: 8n * terabyte,
      outside: 8n * terabyte,
      redundancy: 16n * terabyte,
      reserve: (64n * terabyte) / 10n,
      usable: (9n * 64n * terabyte) / 10n,
    });
  });

  test("adds up to raw to the byte, and no part is negative", () => {
    fc.assert(
      fc.property(
        anyScheme,
        fc.integer({ min: 20, max: 1000 }),
        fc.integer({ min: 0, max: 8 }),
        fc.bigInt({ min: 1n, max: 10n ** 14n }),
        fc.integer({ min: 0, max: 1000 }),
        (text, drives, spares, size, reserve) => {
          fc.pre(text !== "RAID 1" && text !== "mirror");
          const layout = layoutDrives(parseScheme(text, "scheme"), drives, spares);
          const { raw, ...parts } = breakDown(layout, bytes(size), share(reserve / 1000));
          expect(raw).toBe(BigInt(drives) * size);
          expect(Object.values(parts).reduce((sum: bigint, part) => sum + part, 0n)).toBe(raw);
          expect(Object.values(parts).every((part) => part >= 0n)).toBe(true);
        },
      ),
      { seed: 6, numRuns: 1000 },
    );
  });

  test("lets the bytes that rounding leaves fall to redundancy", () => {
    const layout = layoutDrives(parseScheme("2 copies", "scheme"), 3);
    expect(breakDown(layout, bytes(1n), share(0.5))).toMatchObject({ raw: 3n, redundancy: 3n, reserve: 0n, usable: 0n });
  });
});
