import { usable } from "../../src/functions/capacity";

describe("SNIA Common RAID Disk Data Format 2.0 (as quoted in two open headers): level names", () => {
  test.each([["RAID0"], ["RAID1"], ["RAID5"], ["RAID6"], ["RAID10"], ["RAID50 4+1"], ["RAID60 8+2"]])("%s is known", (scheme) => {
    expect(usable(scheme, scheme === "RAID1" ? 2 : 20, 1)).toBeGreaterThan(0);
  });

  test("RAID-1 is 2 devices (simple) or exactly 3 (multi)", () => {
    expect(usable("RAID 1", 2, 4)).toBe(4);
    expect(usable("RAID 1", 3, 4)).toBe(4);
    expect(() => usable("RAID 1", 4, 4)).toThrow("RAID 1 takes at most 3");
  });
});
