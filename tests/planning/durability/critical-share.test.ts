import { criticalShare } from "../../../src/planning/durability";

/** Counts by listing every choice of `width` out of `drives`: those with drive 0, and those of them with all of the first `failed`. */
function byListing(drives: number, width: number, failed: number): number {
  let [withOne, withAll] = [0, 0];
  for (let choice = 0; choice < 2 ** drives; choice++) {
    const taken = Array.from({ length: drives }, (_, drive) => (choice >> drive) & 1);
    if (taken.reduce((sum, one) => sum + one, 0) !== width || taken[0] === 0) continue;
    withOne++;
    if (taken.slice(0, failed).every((one) => one === 1)) withAll++;
  }
  return withAll / withOne;
}

test.each([
  [9, 5, 1],
  [9, 5, 2],
  [9, 5, 3],
  [12, 6, 4],
  [10, 3, 3],
  [7, 7, 4],
])("of %i drives and stripes of %i, %i failed: as by listing every stripe (of two failed the declustering ratio of Holland and Gibson, 1992)", (drives, width, failed) => {
  expect(criticalShare(drives, width, failed)).toBeCloseTo(byListing(drives, width, failed), 14);
});
