// Patterson, Gibson, Katz, "A Case for Redundant Arrays of Inexpensive Disks (RAID)", SIGMOD 1988: figures from memory, each of them
// recomputed from the paper's own formula. Disks of 30,000 h, repair 1 h, 100 data disks.
import { mttdl } from "../../src/functions/durability";
import { efficiency } from "../../src/functions/capacity";

const hoursPerYear = 8760;

describe("Patterson, Gibson, Katz 1988: mean time to failure of 100 data disks (from memory)", () => {
  test.each<[string, string, number, number]>([
    ["no redundancy", "none", 100, 300],
    ["no redundancy, 1000 disks", "none", 1000, 30],
    ["level 1", "RAID 10", 200, 4_500_000],
    ["level 5, groups of 10", "RAID 5 10+1", 110, 820_000],
    ["level 5, groups of 25", "RAID 5 25+1", 104, 346_000],
  ])("%s: %s on %i disks lasts %i hours, to 0.3 %%", (_level, scheme, disks, hours) => {
    expect(Math.abs((mttdl(scheme, disks, 30_000, 1) * hoursPerYear) / hours - 1)).toBeLessThan(0.003);
  });
});

describe("Patterson, Gibson, Katz 1988: usable share of the disks (from memory)", () => {
  test.each<[string, string, number]>([
    ["level 1", "RAID 10", 50],
    ["level 5, groups of 10", "RAID 5 10+1", 91],
    ["level 5, groups of 25", "RAID 5 25+1", 96],
  ])("%s: %s is %i %%", (_level, scheme, percent) => {
    expect(Math.round(100 * efficiency(scheme))).toBe(percent);
  });
});
