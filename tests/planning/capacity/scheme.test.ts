import { parseScheme } from "../../../src/planning/capacity";
import { problemOf } from "../../support/sentence";

describe("a scheme is read in any case and spacing", () => {
  test.each<[string, string, string, number | null, number | null]>([
    ["none", "none", "one-group", null, 0],
    ["raid0", "RAID 0", "one-group", null, 0],
    ["RAID 1", "RAID 1", "one-group", 1, null],
    ["Mirror", "mirror", "one-group", 1, null],
    ["RAID 10", "RAID 10", "fixed-groups", 1, 1],
    ["striped  mirror", "striped mirror", "fixed-groups", 1, 1],
    ["3 copies", "3 copies", "spread", 1, 2],
    ["3copies", "3 copies", "spread", 1, 2],
    ["RAID 5", "RAID 5", "one-group", null, 1],
    ["single parity", "single parity", "one-group", null, 1],
    ["R A I D 6", "RAID 6", "one-group", null, 2],
    ["double parity", "double parity", "one-group", null, 2],
    ["triple parity", "triple parity", "one-group", null, 3],
    ["RAID 5 4+1", "RAID 5 4+1", "fixed-groups", 4, 1],
    ["raid 5 10 + 1", "RAID 5 10+1", "fixed-groups", 10, 1],
    ["RAID5 10+1", "RAID 5 10+1", "fixed-groups", 10, 1],
    ["raid510+1", "RAID 5 10+1", "fixed-groups", 10, 1],
    ["RAID 50 4+1", "RAID 50 4+1", "fixed-groups", 4, 1],
    ["raid504+1", "RAID 50 4+1", "fixed-groups", 4, 1],
    ["RAID 6 8+2", "RAID 6 8+2", "fixed-groups", 8, 2],
    ["RAID60 8+2", "RAID 60 8+2", "fixed-groups", 8, 2],
    ["double parity 8+2", "double parity 8+2", "fixed-groups", 8, 2],
    ["triple parity 8+3", "triple parity 8+3", "fixed-groups", 8, 3],
    ["8+2", "8+2", "spread", 8, 2],
    [" 16 + 4 ", "16+4", "spread", 16, 4],
    ["RAID-10", "RAID 10", "fixed-groups", 1, 1],
    ["raid1+0", "RAID 10", "fixed-groups", 1, 1],
    ["RAID 1 + 0", "RAID 10", "fixed-groups", 1, 1],
    ["R10", "RAID 10", "fixed-groups", 1, 1],
    ["r1+0", "RAID 10", "fixed-groups", 1, 1],
    ["striped-mirror", "striped mirror", "fixed-groups", 1, 1],
    ["RAID-0", "RAID 0", "one-group", null, 0],
    ["r 1", "RAID 1", "one-group", 1, null],
    ["R5", "RAID 5", "one-group", null, 1],
    ["R6", "RAID 6", "one-group", null, 2],
    ["RAID-6", "RAID 6", "one-group", null, 2],
    ["R-6 10+2", "RAID 6 10+2", "fixed-groups", 10, 2],
    ["RAID-60 8+2", "RAID 60 8+2", "fixed-groups", 8, 2],
    ["r60 8+2", "RAID 60 8+2", "fixed-groups", 8, 2],
    ["RAID 5+0 4+1", "RAID 50 4+1", "fixed-groups", 4, 1],
    ["raid6+0 8+2", "RAID 60 8+2", "fixed-groups", 8, 2],
    ["Double-Parity", "double parity", "one-group", null, 2],
    ["triple-parity 8+3", "triple parity 8+3", "fixed-groups", 8, 3],
    ["3-copies", "3 copies", "spread", 1, 2],
  ])("%p is %s", (text, name, grouping, data, redundancy) => {
    expect(parseScheme(text, "scheme")).toMatchObject({ name, grouping, data, redundancy });
  });

  test.each<[string, number, number, boolean]>([
    ["none", 1, 100_000, false],
    ["RAID 0", 1, 100_000, false],
    ["RAID 1", 2, 3, true],
    ["mirror", 2, 4, true],
    ["RAID 10", 4, 100_000, true],
    ["striped mirror", 4, 100_000, true],
    ["3 copies", 3, 100_000, true],
    ["RAID 5", 3, 100_000, false],
    ["single parity", 3, 100_000, false],
    ["RAID 6", 4, 100_000, false],
    ["double parity", 4, 100_000, false],
    ["triple parity", 5, 100_000, false],
    ["single parity 4+1", 5, 100_000, false],
    ["RAID 60 8+2", 10, 100_000, false],
    ["8+3", 11, 100_000, false],
  ])("%s takes %i to %i drives; mirrored: %p", (text, leastDrives, mostDrives, mirrored) => {
    expect(parseScheme(text, "scheme")).toMatchObject({ name: text, leastDrives, mostDrives, mirrored });
  });

  test("a canonical name reads as itself", () => {
    for (const name of ["none", "RAID 1", "RAID 10", "3 copies", "RAID 6", "RAID 60 8+2", "triple parity 8+3", "8+2"]) {
      expect(parseScheme(name, "scheme").name).toBe(name);
      expect(parseScheme(name.toUpperCase(), "scheme")).toEqual(parseScheme(name, "scheme"));
    }
  });
});

describe("a scheme that is not one is refused with what to write", () => {
  const known = 'Write one such as "RAID 6", "RAID 60 8+2", "3 copies" or "8+2".';
  test.each<[string | number | boolean | null, string]>([
    ["RAID 50", 'scheme "RAID 50" lacks its groups. Give the group shape, such as RAID 50 4+1.'],
    ["RAID 60", 'scheme "RAID 60" lacks its groups. Give the group shape, such as RAID 60 8+2.'],
    ["RAID 6 8+1", 'scheme "RAID 6 8+1": RAID 6 has parity of 2 drives a group. Write the shape as data+2, or another level.'],
    ["RAID 50 4+2", 'scheme "RAID 50 4+2": RAID 50 has parity of 1 drive a group. Write the shape as data+1, or another level.'],
    ["1+2", 'scheme "1+2" is a mirror: 3 copies of all data. Write 3 copies.'],
    ["RAID 5 1+1", 'scheme "RAID 5 1+1" has too little data: 2 drives are the least. Give more, or RAID 10 or 2 copies for mirrored drives.'],
    ["8+0", 'scheme "8+0" has no redundancy. Write none, or a code such as 8+2.'],
    ["1 copies", 'scheme "1 copies" keeps no second copy. Give 2 copies or more, or none.'],
    ["RAID 7", `scheme "RAID 7" is not a scheme. ${known}`],
    ["RAID 1 4+1", `scheme "RAID 1 4+1" is not a scheme. ${known}`],
    ["constructor", `scheme "constructor" is not a scheme. ${known}`],
    ["+2", `scheme "+2" is not a scheme. ${known}`],
    ["8+2+1", `scheme "8+2+1" is not a scheme. ${known}`],
    [10, 'scheme is 10, not text. Put the scheme in quotes: "8+2".'],
    [true, 'scheme is TRUE, not text. Put the scheme in quotes: "8+2".'],
    [null, 'scheme is blank. Put the scheme in quotes, such as "RAID 6" or "8+2".'],
  ])("%p", (text, sentence) => {
    expect(problemOf(() => parseScheme(text, "scheme"))).toMatchObject({ kind: "invalid", argument: "scheme", sentence });
  });
});
