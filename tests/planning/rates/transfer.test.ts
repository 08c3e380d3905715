import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { megabytesPerSecond, parseSize, share } from "../../../src/planning/quantity";
import { moveHours, rebuildHours } from "../../../src/planning/rates";
import { problemOf } from "../../support/sentence";

const rebuild = (scheme: string, drives: number, given = 1) =>
  rebuildHours(layoutDrives(parseScheme(scheme, "scheme"), drives), parseSize(3.6, "driveSize"), megabytesPerSecond(100), share(given));

test("3.6 TB at 100 MB/s move in ten hours", () => {
  expect(moveHours(parseSize(3.6, "size"), megabytesPerSecond(100))).toBe(10);
});

test.each<[string, number, number, number]>([
  ["RAID 1", 2, 1, 10],
  ["RAID 6", 12, 1, 10],
  ["RAID 60 8+2", 20, 0.25, 40],
  // No more drives than a stripe takes: the new drive is written from end to end, as in any group.
  ["8+2", 10, 1, 10],
  ["2 copies", 2, 1, 10],
  ["8+4", 12, 1, 10],
  ["8+4", 13, 1, 7.5],
  ["8+2", 46, 1, 2],
  ["3 copies", 21, 0.5, 2],
])("%s on %i drives at a share of %p rebuilds a drive in %p hours", (scheme, drives, given, hours) => {
  expect(rebuild(scheme, drives, given)).toBe(hours);
});

test("a spread code rebuilds faster on more drives", () => {
  expect(rebuild("8+2", 24)).toBeLessThan(rebuild("8+2", 12));
});

test("without redundancy there is nothing to rebuild from: no answer", () => {
  expect(problemOf(() => rebuild("none", 4))).toMatchObject({
    kind: "no-answer",
    sentence: 'scheme none has nothing to rebuild a drive from. Write a scheme with redundancy, such as "RAID 6".',
  });
});
