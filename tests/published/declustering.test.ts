import { criticalShare } from "../../src/planning/durability";

describe("Holland, Gibson 1992: with C disks and stripes of G, a disk shares (G - 1) / (C - 1) of its stripes with another (from memory)", () => {
  test.each([
    [21, 4, 0.15],
    [21, 18, 0.85],
    [21, 21, 1],
  ])("%i disks, stripes of %i: %p", (disks, width, ratio) => {
    expect(criticalShare(disks, width, 2)).toBe(ratio);
  });
});
