import fc from "fast-check";
import { bytes, bytesIn, parseSize, parseSizeOrZero, parseUnit, partOf, sizeIn } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

describe("a size is read as whole bytes, TB as in the SI and TiB as in IEC 80000-13", () => {
  test.each<[string | number, bigint]>([
    [4, 4_000_000_000_000n],
    [3.84, 3_840_000_000_000n],
    [1.1 + 2.2, 3_300_000_000_000n],
    ["960 GB", 960_000_000_000n],
    ["3.84TB", 3_840_000_000_000n],
    ["12 TiB", 13_194_139_533_312n],
    ["4 tb", 4_000_000_000_000n],
    ["1 eib", 1_152_921_504_606_846_976n],
    ["512 B", 512n],
    ["+.5 kB", 500n],
    ["1.4 B", 1n],
    ["1.5 B", 2n],
    [1e-12, 1n],
    [1e12, 1_000_000_000_000_000_000_000_000n],
    ["1000000 EB", 1_000_000_000_000_000_000_000_000n],
  ])("%p is %p bytes", (value, size) => {
    expect(parseSize(value, "size")).toBe(size);
  });

  test.each<[string | number | boolean | null, string]>([
    ["4 Tb", 'size "4 Tb" is in bits. Write it in bytes, with a capital B.'],
    ["4 Gb", 'size "4 Gb" is in bits. Write it in bytes, with a capital B.'],
    ["4 Tib", 'size "4 Tib" is in bits. Write it in bytes, with a capital B.'],
    ["100 bits", 'size "100 bits" is in bits. Write it in bytes, with a capital B.'],
    ["12 parsecs", 'size "12 parsecs" names no known unit. Write one of B, kB, MB, GB, TB, PB, EB, KiB, MiB, GiB, TiB, PiB, EiB.'],
    ["3,84 TB", 'size "3,84 TB" has a comma. Write 3.84 TB.'],
    ["1,000 GB", 'size "1,000 GB" has a comma: is it 1.000 GB or 1000 GB? Write it without the comma.'],
    ["3,84", 'size "3,84" has a comma. Write 3.84 TB.'],
    ["1,000", 'size "1,000" has a comma: is it 1.000 TB or 1000 TB? Write it without the comma.'],
    ["-4 TB", 'size "-4 TB" is below zero. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    ["4", 'size "4" is text without a unit. Write it as a number of TB, or "4 TB".'],
    ["big", 'size "big" is not a size. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [1e308, 'size 1e+308 is over a million EB. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    ["1000000.000000000000000001 EB", 'size "1000000.000000000000000001 EB" is over a million EB. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [Infinity, 'size Infinity is over a million EB. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    ["99999999999 EB", 'size "99999999999 EB" is over a million EB. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [-1, 'size is -1, below zero. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [0, 'size 0 is less than one byte. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    ["0.4 B", 'size "0.4 B" is less than one byte. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [null, 'size is blank. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [true, 'size is TRUE. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
  ])("%p is refused", (value, sentence) => {
    expect(problemOf(() => parseSize(value, "size"))).toMatchObject({ kind: "invalid", argument: "size", sentence });
  });

  test("a refusal is not remembered under the argument that met it first", () => {
    problemOf(() => parseSize("9 furlongs", "target"));
    expect(problemOf(() => parseSize("9 furlongs", "driveSize")).argument).toBe("driveSize");
  });

  test("0 is read where 0 says something", () => {
    expect(parseSizeOrZero(0, "used")).toBe(0n);
  });
});

describe("a unit is read in any case", () => {
  test.each([["TB"], ["tb"], ["TiB"], ["kib"], ["EB"]])("%s", (text) => {
    expect(parseUnit(text, "unit").symbol.toLowerCase()).toBe(text.toLowerCase());
  });

  test("a blank is TB", () => {
    expect(parseUnit(null, "unit").symbol).toBe("TB");
  });

  test("a number is refused", () => {
    expect(problemOf(() => parseUnit(4, "unit")).sentence).toBe('unit is 4. Write a unit in quotes, such as "TB" or "TiB".');
  });
});

describe("a size in a unit is the nearest double", () => {
  test("to the exact quotient, at any size and in every unit", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 1n, max: 10n ** 24n }), fc.constantFrom("B", "kB", "GB", "TB", "PB", "EB", "KiB", "TiB", "PiB", "EiB"), (size, symbol) => {
        const unit = parseUnit(symbol, "unit");
        // A decimal text of enough digits is read to the nearest double by the language itself.
        expect(bytesIn(bytes(size), unit)).toBe(Number(sizeIn(bytes(size), unit).toFixed(60)));
      }),
      { seed: 3, numRuns: 1000 },
    );
  });

  test("a part of a whole keeps its digits past 2^53", () => {
    expect(partOf(bytes(10n ** 23n + 1n), bytes(2n * (10n ** 23n + 1n)))).toBe(0.5);
  });
});
