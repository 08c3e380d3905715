// Chen, Lee, Gibson, Katz, Patterson, "RAID: High-Performance, Reliable Secondary Storage", ACM Computing Surveys 26(2), 1994: from memory.
import { efficiency } from "../../src/functions/capacity";
import { mttdl, readfault } from "../../src/functions/durability";
import { writecost } from "../../src/functions/rates";

describe("Chen et al. 1994: accesses for a small write (from memory)", () => {
  test.each([
    ["RAID 5", 4],
    ["RAID 6", 6],
  ])("%s: %i", (scheme, accesses) => {
    expect(writecost(scheme)).toBe(accesses);
  });
});

describe("Chen et al. 1994: space efficiency of a group of G disks (from memory)", () => {
  test.each<[string, number, number]>([
    ["RAID 0", 16, 1],
    ["RAID 10", 16, 1 / 2],
    ["RAID 5", 16, 15 / 16],
    ["RAID 6", 16, 14 / 16],
  ])("%s of %i disks: %p", (scheme, disks, share) => {
    expect(efficiency(scheme, disks)).toBeCloseTo(share, 15);
  });
});

test("Chen et al. 1994: 100 disks of 200,000 h in groups of 16, repair 1 h, last about 3000 years (from memory)", () => {
  // 100 disks are 6.25 groups of 16.
  expect(Math.abs((mttdl("RAID 5", 16, 200_000, 1) / 6.25 / 3000) - 1)).toBeLessThan(0.02);
});

test("Chen et al. 1994: all of a 5 GB disk is read without a bit error of 1 in 10^14 with 99.96 % (from memory)", () => {
  expect(100 * (1 - readfault("5 GB", 1e-14))).toBeCloseTo(99.96, 2);
});
