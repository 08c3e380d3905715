import { iops } from "../../src/functions/rates";

describe("Arpaci-Dusseau, Operating Systems: Three Easy Pieces, chapter 38 (student notes): random writes of N = 8 disks of rate R", () => {
  const rate = 98;
  test.each<[string, string, number]>([
    ["RAID 0", "N·R", 8 * rate],
    ["RAID 10", "N·R/2", 4 * rate],
    ["RAID 5", "N·R/4", 2 * rate],
  ])("%s: %s", (scheme, _formula, operations) => {
    expect(iops(scheme, 8, rate, 0)).toBe(operations);
  });
});
