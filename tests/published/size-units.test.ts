import { convertsize } from "../../src/functions/capacity";

describe("IEC 80000-13: binary prefixes are powers of 1024", () => {
  test.each<[string, number]>([
    ["1 KiB", 1024],
    ["1 MiB", 1_048_576],
    ["1 GiB", 1_073_741_824],
    ["1 TiB", 1_099_511_627_776],
    ["1 PiB", 1_125_899_906_842_624],
    ["1 EiB", 1_152_921_504_606_846_976],
  ])("%s is %i bytes", (text, bytes) => {
    expect(convertsize(text, "B")).toBe(bytes);
  });

  test.each<[string, string, number]>([
    ["1 KiB", "kB", 1.024],
    ["1 MiB", "MB", 1.048576],
    ["1 GiB", "GB", 1.073741824],
    ["1 TiB", "TB", 1.099511627776],
    ["1 PiB", "PB", 1.125899906842624],
  ])("%s in %s is %p", (text, unit, value) => {
    expect(convertsize(text, unit)).toBe(value);
  });

  test("1 TB is 0.909 TiB", () => {
    expect(convertsize(1, "TiB")).toBeCloseTo(0.909494701772928, 15);
  });
});

test("ATA: 28 bits address 2^28 blocks of 512 bytes, 128 GiB or 137.43 GB", () => {
  expect(convertsize(`${2 ** 28 * 512} B`, "GiB")).toBe(128);
  expect(convertsize("128 GiB", "GB")).toBeCloseTo(137.43, 1);
});
