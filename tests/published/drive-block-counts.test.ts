import { drivebytes } from "../../src/functions/capacity";

describe("IDEMA LBA1-02 and LBA1-03: blocks of 512 bytes in a drive of a marketed size", () => {
  test.each<[string, number]>([
    ["80 GB", 156_301_488],
    ["500 GB", 976_773_168],
    ["460 GB", 898_633_008],
    ["8 TB", 15_628_053_168],
  ])("%s: %i blocks", (size, blocks) => {
    expect(drivebytes(size)).toBe(blocks * 512);
  });
});

describe("IDEMA LBA1-03: blocks of 4096 bytes, as quoted in a tutorial", () => {
  test.each<[string, number]>([
    ["500 GB", 122_096_646],
    ["460 GB", 112_329_126],
  ])("%s: %i blocks", (size, blocks) => {
    expect(drivebytes(size, 4096)).toBe(blocks * 4096);
  });
});

describe("bytes that real drives report of themselves, in public drive reports", () => {
  test.each<[string, number]>([
    ["500 GB", 500_107_862_016],
    ["5 TB", 5_000_981_078_016],
    ["8 TB", 8_001_563_222_016],
    ["16 TB", 16_000_900_661_248],
    ["20 TB", 20_000_588_955_648],
  ])("%s: %i", (size, bytes) => {
    expect(drivebytes(size)).toBe(bytes);
  });
});

test("SFF-8447: drives above 8 TB hold an integer multiple of 1 GiB (abstract; the rule of rounding up is from memory)", () => {
  expect(drivebytes("10 TB")).toBe(19_532_873_728 * 512);
  expect(drivebytes("12 TB")).toBe(23_437_770_752 * 512);
  expect(drivebytes("18 TB")).toBe(35_156_656_128 * 512);
});
