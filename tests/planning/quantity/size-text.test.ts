import fc from "fast-check";
import { bytes, formatSize, parseSize, parseUnit } from "../../../src/planning/quantity";

const written = (size: string, unit: string, digits: number | null = null) => formatSize(parseSize(size, "size"), parseUnit(unit, "unit"), digits);

test.each<[string, string, number | null, string]>([
  ["40 TB", "TB", null, "40 TB"],
  ["3840 GB", "TB", null, "3.84 TB"],
  ["40 TB", "TiB", null, "36.379788070917 TiB"],
  ["15362991415296 B", "TB", null, "15.362991415296 TB"],
  ["1 B", "TB", null, "0.000000000001 TB"],
  ["1 B", "TiB", null, "0.000000000001 TiB"],
  ["512 MiB", "GiB", null, "0.5 GiB"],
  ["1536 B", "B", null, "1536 B"],
  ["40 TB", "TiB", 2, "36.37 TiB"],
  ["40 TB", "TB", 2, "40.00 TB"],
  ["39.999 TB", "TB", 0, "39 TB"],
  ["999 GB", "TB", 1, "0.9 TB"],
  ["999 GB", "TB", 0, "0 TB"],
])("%s in %s with %p digits is %s", (size, unit, digits, text) => {
  expect(written(size, unit, digits)).toBe(text);
});

const anySize = fc.bigInt({ min: 1n, max: 10n ** 24n }).map(bytes);
const anyUnit = fc.constantFrom("B", "kB", "MB", "GB", "TB", "PB", "EB", "KiB", "MiB", "GiB", "TiB", "PiB", "EiB").map((name) => parseUnit(name, "unit"));

test("without digits it reads back to the same bytes, and one decimal fewer does not", () => {
  fc.assert(
    fc.property(anySize, anyUnit, (size, unit) => {
      const text = formatSize(size, unit, null);
      expect(parseSize(text, "size")).toBe(size);
      const [, whole = "", part = ""] = /^(\d+)(?:\.(\d+))? /.exec(text) ?? [];
      if (part === "") return;
      const shorter = BigInt(whole + part.slice(0, -1));
      const read = (figures: bigint): bigint => (2n * figures * unit.bytes + 10n ** BigInt(part.length - 1)) / (2n * 10n ** BigInt(part.length - 1));
      expect([read(shorter), read(shorter + 1n)]).not.toContain(size);
    }),
    { seed: 5, numRuns: 1000 },
  );
});

test("with digits it is never more than there is, and less by under one in the last place", () => {
  fc.assert(
    fc.property(anySize, anyUnit, fc.integer({ min: 0, max: 9 }), (size, unit, digits) => {
      const figures = BigInt(formatSize(size, unit, digits).split(" ")[0]!.replace(".", ""));
      const scaled = size * 10n ** BigInt(digits);
      expect(figures * unit.bytes).toBeLessThanOrEqual(scaled);
      expect((figures + 1n) * unit.bytes).toBeGreaterThan(scaled);
    }),
    { seed: 6, numRuns: 500 },
  );
});
