import { parseScheme, schemeEfficiency } from "../../../src/planning/capacity";
import { problemOf } from "../../support/sentence";

test.each<[string, number | null, number]>([
  ["none", null, 1],
  ["RAID 10", null, 1 / 2],
  ["RAID 10", 13, 6 / 13],
  ["3 copies", null, 1 / 3],
  ["RAID 60 8+2", null, 0.8],
  ["RAID 60 8+2", 24, 16 / 24],
  ["8+2", 24, 0.8],
  ["RAID 6", 12, 10 / 12],
  ["mirror", 3, 1 / 3],
])("%s on %p drives gives a share of %p", (scheme, drives, share) => {
  expect(schemeEfficiency(parseScheme(scheme, "scheme"), drives)).toBeCloseTo(share, 15);
});

test.each(["RAID 6", "RAID 1", "mirror"])("%s alone has no share: it depends on the drives", (scheme) => {
  expect(problemOf(() => schemeEfficiency(parseScheme(scheme, "scheme"), null))).toMatchObject({
    argument: "drives",
    sentence: `drives is blank or 0, and the share of ${scheme} depends on it. Write the number of drives, such as 12.`,
  });
});
