import fc from "fast-check";
import { layoutDrives, layoutRows, parseScheme, schemeEfficiency, survivedFailures } from "../../../src/planning/capacity";
import { problemOf } from "../../support/sentence";
import { anyScheme } from "./schemes";

const lay = (scheme: string, drives: number, spares = 0) => layoutDrives(parseScheme(scheme, "scheme"), drives, spares);

describe("drives are laid into groups, spares and leftovers", () => {
  test("groups come first, then spares, then what fills no group", () => {
    expect(layoutRows(lay("RAID 60 8+2", 24, 2))).toEqual([
      { kind: "group", group: 1, firstDrive: 1, lastDrive: 10, data: 8, redundancy: 2 },
      { kind: "group", group: 2, firstDrive: 11, lastDrive: 20, data: 8, redundancy: 2 },
      { kind: "spares", group: null, firstDrive: 21, lastDrive: 22, data: null, redundancy: null },
      { kind: "outside", group: null, firstDrive: 23, lastDrive: 24, data: null, redundancy: null },
    ]);
  });

  test("a spread scheme shows one stripe over all drives", () => {
    expect(layoutRows(lay("8+2", 12))).toEqual([{ kind: "spread", group: null, firstDrive: 1, lastDrive: 12, data: 8, redundancy: 2 }]);
  });

  test("rows cover every drive once", () => {
    fc.assert(
      fc.property(anyScheme, fc.integer({ min: 20, max: 200 }), fc.integer({ min: 0, max: 5 }), (text, drives, spares) => {
        const scheme = parseScheme(text, "scheme");
        fc.pre(drives - spares <= scheme.mostDrives);
        let next = 1;
        for (const row of layoutRows(layoutDrives(scheme, drives, spares))) {
          expect(row.firstDrive).toBe(next);
          next = row.lastDrive + 1;
        }
        expect(next).toBe(drives + 1);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

describe("a number of drives that does not fit is refused", () => {
  test.each<[string, number, number, string, string]>([
    ["RAID 6", 12, 12, "spares", "spares is 12 of 12 drives, which leaves none for data. Write fewer spares than drives."],
    ["RAID 10", 3, 0, "drives", "drives 3 is too few: RAID 10 needs at least 4. Write 4 or more."],
    ["RAID 5", 3, 1, "drives", "drives 3 less 1 spares is too few: RAID 5 needs at least 3. Write 4 or more."],
    ["RAID 6", 3, 0, "drives", "drives 3 is too few: RAID 6 needs at least 4. Write 4 or more."],
    ["triple parity", 4, 0, "drives", "drives 4 is too few: triple parity needs at least 5. Write 5 or more."],
    ["8+2", 9, 0, "drives", "drives 9 is too few: 8+2 needs at least 10. Write 10 or more."],
    ["RAID 1", 4, 0, "drives", "drives 4 is too many: RAID 1 takes at most 3. Write RAID 10 (pairs, space of 2 drives) or 3 copies (space of 1.33)."],
    ["mirror", 24, 0, "drives", "drives 24 is too many: mirror takes at most 4. Write RAID 10 (pairs, space of 12 drives) or 3 copies (space of 8)."],
    ["mirror", 7, 2, "drives", "drives 7 less 2 spares is too many: mirror takes at most 4. Write RAID 10 (pairs, space of 2 drives) or 3 copies (space of 1.67)."],
    ["RAID 1", 1, 0, "drives", "drives 1 is too few: RAID 1 needs at least 2. Write 2 or more."],
    ["RAID 6", 100_001, 0, "drives", "drives is 100001. Write at most 100000."],
  ])("%s on %i drives, %i spares", (scheme, drives, spares, argument, sentence) => {
    expect(problemOf(() => lay(scheme, drives, spares))).toMatchObject({ kind: "invalid", argument, sentence });
  });
});

test("what a mirror of too many drives is told to write instead gives the space that is said", () => {
  const room = (scheme: string) => schemeEfficiency(parseScheme(scheme, "scheme"), 24) * 24;
  expect([room("RAID 10"), room("3 copies")]).toEqual([12, 8]);
});

describe("failures survived", () => {
  test.each<[string, number, number, number]>([
    ["RAID 0", 4, 0, 0],
    ["RAID 1", 3, 2, 2],
    ["mirror", 4, 3, 3],
    ["RAID 10", 8, 1, 4],
    ["RAID 10", 9, 1, 4],
    ["3 copies", 12, 2, 2],
    ["RAID 5", 8, 1, 1],
    ["RAID 60 8+2", 20, 2, 4],
    ["8+3", 40, 3, 3],
  ])("%s on %i drives: always %i, at best %i", (scheme, drives, always, best) => {
    expect(survivedFailures(lay(scheme, drives), "always")).toBe(always);
    expect(survivedFailures(lay(scheme, drives), "best")).toBe(best);
  });

  test("more parity never survives less", () => {
    for (let drives = 5; drives <= 60; drives++) {
      const survived = ["none", "RAID 5", "RAID 6", "triple parity"].map((scheme) => survivedFailures(lay(scheme, drives), "always"));
      expect(survived).toEqual([...survived].sort((a, b) => a - b));
    }
    for (const failures of ["always", "best"] as const) {
      for (let parity = 2; parity <= 8; parity++) {
        expect(survivedFailures(lay(`8+${parity}`, 40), failures)).toBeGreaterThan(survivedFailures(lay(`8+${parity - 1}`, 40), failures));
      }
    }
  });
});
