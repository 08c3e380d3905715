import fc from "fast-check";
import { layoutDrives, pairWriteSizes, parseScheme, writeCost } from "../../../src/planning/capacity";
import { bytes, parseSize } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const cost = (scheme: string, drives: number | null = null, writeSize: string | null = null, stripeUnit = "64 KiB") => {
  const read = parseScheme(scheme, "scheme");
  const sizes = writeSize === null ? null : { writeSize: parseSize(writeSize, "writeSize"), stripeUnit: parseSize(stripeUnit, "stripeUnit") };
  return writeCost(read, drives === null ? null : layoutDrives(read, drives), sizes);
};

test.each([
  ["RAID 0", 1],
  ["RAID 1", 2],
  ["RAID 10", 2],
  ["3 copies", 3],
  ["RAID 5", 4],
  ["RAID 6", 6],
  ["triple parity 8+3", 8],
  ["8+2", 6],
])("a small write to %s takes %i operations", (scheme, operations) => {
  expect(cost(scheme)).toBe(operations);
});

test("a mirror laid on four drives takes four", () => {
  expect(cost("mirror", 4)).toBe(4);
});

test.each([
  ["RAID 5", 3, 3],
  ["RAID 5", 4, 4],
  ["RAID 6", 4, 4],
  ["RAID 6", 5, 5],
  ["RAID 6", 6, 6],
  ["RAID 6", 12, 6],
])("a small write to %s on %i drives takes %i: never more than the whole stripe", (scheme, drives, operations) => {
  expect(cost(scheme, drives)).toBe(operations);
});

test.each<[string, string, number]>([
  ["none", "256 KiB", 4],
  ["2 copies", "256 KiB", 8],
  ["RAID 10", "65 KiB", 4],
  // Two units of four and the parity: read three, write three, or the whole stripe of five.
  ["RAID 5 4+1", "128 KiB", 5],
  ["RAID 5 8+1", "128 KiB", 6],
  ["RAID 6 8+2", "64 KiB", 6],
  ["RAID 6 8+2", "65 KiB", 8],
  ["RAID 6 8+2", "256 KiB", 10],
  // Two full stripes; then two and one unit behind them.
  ["RAID 6 8+2", "1 MiB", 20],
  ["RAID 6 8+2", "1088 KiB", 26],
  ["8+2", "512 KiB", 10],
])("a write to %s of %s in units of 64 KiB takes %i operations", (scheme, writeSize, operations) => {
  expect(cost(scheme, null, writeSize)).toBe(operations);
});

test("both sizes are given, or neither", () => {
  const [size, unit] = [bytes(4n), bytes(2n)];
  expect(pairWriteSizes(size, unit)).toEqual({ writeSize: size, stripeUnit: unit });
  expect(pairWriteSizes(null, null)).toBeNull();
  expect(problemOf(() => pairWriteSizes(size, null)).sentence).toBe(
    'stripeUnit is blank, though writeSize is given. Write it too, such as "64 KiB", or leave out both for a small write.',
  );
  expect(problemOf(() => pairWriteSizes(null, unit)).sentence).toBe(
    'writeSize is blank, though stripeUnit is given. Write it too, such as "256 KiB", or leave out both for a small write.',
  );
});

test("one byte counts as one unit", () => {
  expect(cost("RAID 6 8+2", null, "1 B")).toBe(6);
});

test("a write of several units asks for a width, of one unit it does not", () => {
  expect(cost("RAID 6", null, "64 KiB")).toBe(6);
  expect(problemOf(() => cost("RAID 6", null, "65 KiB"))).toMatchObject({
    kind: "invalid",
    argument: "scheme",
    sentence: "scheme RAID 6 says no width, and a write of several stripe units depends on it. Write a shape, such as RAID 6 8+2.",
  });
  expect(cost("RAID 6", 10, "256 KiB")).toBe(10);
});

test("a longer write never costs less, and full stripes cost the least a unit", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 20 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 200 }), (k, m, units) => {
      const scheme = parseScheme(`${k}+${m}`, "scheme");
      const of = (count: number): number => writeCost(scheme, null, { writeSize: bytes(BigInt(count)), stripeUnit: bytes(1n) });
      expect(of(units + 1)).toBeGreaterThanOrEqual(of(units));
      expect(of(units) / units).toBeGreaterThanOrEqual((k + m) / k - 1e-12);
    }),
    { seed: 21, numRuns: 300 },
  );
});
