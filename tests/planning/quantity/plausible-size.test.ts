import { bytes, parsePlausibleSize } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const drive = { thing: "drive", most: bytes(10n ** 15n), example: "960 GB" };
const read = (value: string | number | null) => parsePlausibleSize(value, "driveSize", drive);

test.each<[string | number, bigint]>([
  [1000, 10n ** 15n],
  ["4000 TB", 4n * 10n ** 15n],
  ["4000 GB", 4n * 10n ** 12n],
])("%p is a size of a drive", (value, size) => {
  expect(read(value)).toBe(size);
});

test("a bare number above any drive is asked about, and no size is proposed for it: GB or a slip, who knows", () => {
  expect(problemOf(() => read(4000))).toMatchObject({
    kind: "invalid",
    argument: "driveSize",
    received: 4000,
    sentence: 'driveSize is 4000, and a bare number is TB. No drive is that large: write it with its unit, such as "960 GB".',
  });
});

test("what is no size at all is refused as everywhere", () => {
  expect(problemOf(() => read(null)).sentence).toContain("driveSize is blank.");
  expect(problemOf(() => read("4000")).sentence).toContain("is text without a unit.");
});
