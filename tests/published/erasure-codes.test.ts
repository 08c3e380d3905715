import { efficiency, survives } from "../../src/functions/capacity";

describe("storage overhead of erasure codes, n / k", () => {
  test.each<[string, string, number]>([
    ["Huang et al., USENIX ATC 2012 (quoted)", "6+3", 1.5],
    ["Huang et al., USENIX ATC 2012 (quoted)", "12+4", 1.33],
    ["Sathiamoorthy et al., PVLDB 6(5), 2013", "10+4", 1.4],
  ])("%s: %s is %p", (_source, code, overhead) => {
    expect(1 / efficiency(code)).toBeCloseTo(overhead, 2);
  });
});

describe("Arpaci-Dusseau, Operating Systems: Three Easy Pieces, chapter 38 (student notes): capacity and failures of N = 8 disks", () => {
  test.each<[string, number, number, number]>([
    ["RAID 0", 8, 0, 0],
    ["RAID 10", 4, 1, 4],
    ["RAID 5", 7, 1, 1],
  ])("%s: %i of 8 disks, survives %i, with luck %i", (scheme, disks, always, best) => {
    expect(8 * efficiency(scheme, 8)).toBeCloseTo(disks, 12);
    expect(survives(scheme, 8)).toBe(always);
    expect(survives(scheme, 8, "best")).toBe(best);
  });
});
