import { driveBytes } from "../../../src/planning/capacity";
import { parseSize } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

test("both block sizes hold the same bytes up to 8 TB", () => {
  for (const size of ["50 GB", "960 GB", "1.92 TB", "8 TB"]) {
    expect(driveBytes(parseSize(size, "size"), 512)).toBe(driveBytes(parseSize(size, "size"), 4096));
  }
});

test("above 8 TB a drive holds the next whole GiB", () => {
  for (const size of ["8001 GB", "10 TB", "22 TB", "30.72 TB"]) {
    const marketed = parseSize(size, "size");
    const exact = driveBytes(marketed, 512);
    expect(exact % 2n ** 30n).toBe(0n);
    expect(exact - marketed).toBeLessThan(2n ** 30n);
    expect(exact).toBeGreaterThanOrEqual(marketed);
  }
});

test.each(["49 GB", "500.5 GB", "1 TiB", "901 TB"])("%s is no size that drives are sold in", (size) => {
  expect(problemOf(() => driveBytes(parseSize(size, "size"), 512)).sentence).toMatch(/^size .* is not a size drives are sold in\. Write whole GB/);
});

test.each([
  ["15360 GB", 15_362_991_415_296n],
  ["30720 GB", 30_725_971_992_576n],
])("a solid-state drive of %s keeps the line above 8 TB, in both block sizes", (size, exact) => {
  expect(driveBytes(parseSize(size, "size"), 512, "flash")).toBe(exact);
  expect(driveBytes(parseSize(size, "size"), 4096, "flash")).toBe(exact);
});

test("up to 8 TB it makes no difference what a drive is made of", () => {
  for (const size of ["960 GB", "3840 GB", "8 TB"]) {
    expect(driveBytes(parseSize(size, "size"), 512, "flash")).toBe(driveBytes(parseSize(size, "size"), 512, "disk"));
  }
});
