import { schemeLayout } from "../../../../../src/planning/checks/rules/capacity/scheme-layout";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds drives that a scheme cannot be laid out on, and spares that leave none", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { drives: 12, spares: 2 });
  Object.assign(rows.arrays[1]!, { drives: 12, spares: 12 });
  expect(cells(schemeLayout, rows)).toEqual(["Arrays 5 Drives", "Arrays 6 Spares"]);
  expect(found(schemeLayout, rows)[0]).toContain("RAID 60 9+2 needs at least 11");
});

test("takes the least drives of a scheme", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { drives: 13, spares: 2 });
  expect(cells(schemeLayout, rows)).toEqual([]);
});

test("finds a scheme across arrays that is none, or needs more arrays", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = "4+1";
  rows.pools[1]!.acrossArrays = "twice";
  expect(cells(schemeLayout, rows)).toEqual(["Pools 5 Across arrays", "Pools 6 Across arrays"]);
});

test("says what a pool lacks", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = "4+1";
  expect(found(schemeLayout, rows)).toEqual(["Pools 5 Across arrays: 4+1 cannot be laid over the 4 arrays of Scans: it needs at least 5."]);
});

test("takes blank spares for none, and asks nothing without drives, of a pool without arrays or with a scheme that just fits", () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { drives: 11, spares: null });
  rows.arrays[1]!.drives = null;
  rows.pools[0]!.acrossArrays = "3+1";
  rows.pools.push({ pool: "Drafts", acrossArrays: "4+1" });
  expect(cells(schemeLayout, rows)).toEqual([]);
});
