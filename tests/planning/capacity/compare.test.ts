import { commonSchemes, compareSchemes, parseScheme } from "../../../src/planning/capacity";
import { parseSize } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const size = parseSize(4, "driveSize");

test("schemes are compared on the same drives, spares counted in the efficiency", () => {
  const [raid6, raid10, code] = compareSchemes(["RAID 6", "RAID 10", "8+2"].map((text) => parseScheme(text, "scheme")), 13, size, 1);
  expect(raid6).toMatchObject({ usable: 40n * 10n ** 12n, efficiency: 10 / 13, always: 2, best: 2, writeCost: 6 });
  expect(raid10).toMatchObject({ usable: 24n * 10n ** 12n, always: 1, best: 6, writeCost: 2 });
  expect(code).toMatchObject({ usable: 384n * 10n ** 11n, always: 2, best: 2, writeCost: 6 });
});

test("a mirror of three drives costs three writes", () => {
  expect(compareSchemes([parseScheme("mirror", "scheme")], 3, size, 0)[0]!.writeCost).toBe(3);
});

test("only the common schemes that fit are offered", () => {
  expect(commonSchemes(3, 0).map(({ name }) => name)).toEqual(["RAID 0", "RAID 5", "2 copies", "3 copies"]);
  expect(commonSchemes(1, 0).map(({ name }) => name)).toEqual(["RAID 0"]);
  expect(commonSchemes(3, 1).map(({ name }) => name)).toEqual(["RAID 0", "2 copies"]);
  expect(commonSchemes(100_000, 0)).toHaveLength(12);
  expect(commonSchemes(24, 0).length).toBeGreaterThan(commonSchemes(6, 0).length);
  expect(problemOf(() => commonSchemes(4, 4)).argument).toBe("spares");
});

test("one scheme that does not fit fails the comparison", () => {
  expect(problemOf(() => compareSchemes([parseScheme("RAID 6", "scheme"), parseScheme("8+2", "scheme")], 9, size, 0)).argument).toBe("drives");
});
