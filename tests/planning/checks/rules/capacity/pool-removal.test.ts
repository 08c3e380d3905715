import { poolRemoval } from "../../../../../src/planning/checks/rules/capacity/pool-removal";
import { cells, found, sample } from "../../../../support/plan-rows";

// The others of Masters may take 0.85 x 120.436 = 102.371 TB less what they hold.
test("finds an array for which the others have no room", () => {
  const rows = sample();
  Object.assign(rows.arrays[4]!, { used: "52 TB" });
  Object.assign(rows.arrays[5]!, { used: "51 TB" });
  expect(found(poolRemoval, rows)).toEqual([
    "Arrays 9 Pool: cs-array-1 could not be taken out of Masters: it holds 52 TB, the others have room for 51.37 TB.",
    "Arrays 10 Pool: cs-array-2 could not be taken out of Masters: it holds 51 TB, the others have room for 50.37 TB.",
  ]);
});

test("takes arrays that just fit into the others", () => {
  const rows = sample();
  Object.assign(rows.arrays[4]!, { used: "51 TB" });
  Object.assign(rows.arrays[5]!, { used: "51 TB" });
  expect(cells(poolRemoval, rows)).toEqual([]);
});

test("finds a scheme across arrays that one array fewer cannot hold", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = "3+1";
  expect(cells(poolRemoval, rows)).toEqual(["Pools 5 Across arrays"]);
});

test("asks nothing of a pool of one array", () => {
  const rows = sample();
  rows.arrays[5]!.pool = null;
  expect(cells(poolRemoval, rows)).toEqual([]);
});

test("says over how many arrays a scheme could not be laid", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = "3+1";
  expect(found(poolRemoval, rows)).toEqual(["Pools 5 Across arrays: No array could be taken out of Scans for good: 3+1 cannot be laid over 3. Plan one more."]);
});

test("counts no room in an array that is over its limit already", () => {
  const rows = sample();
  rows.pools.push({ pool: "Drafts", fillLimit: 0.5, acrossArrays: "none" });
  const drafts = { site: "Bindery", drives: 4, driveSize: "1 TB", scheme: "none", spares: 0, pool: "Drafts" };
  // Each has 4 TB and may hold 2 of them: one is over that by 1 TB, which takes nothing from the room in the other two.
  rows.arrays.push({ array: "d1", ...drafts, used: "3 TB" }, { array: "d2", ...drafts, used: "1 TB" }, { array: "d3", ...drafts, used: "1 TB" });
  expect(found(poolRemoval, rows)).toEqual(["Arrays 11 Pool: d1 could not be taken out of Drafts: it holds 3 TB, the others have room for 2 TB."]);
});

test("takes a scheme across arrays that one array fewer can just hold", () => {
  const rows = sample();
  rows.pools[0]!.acrossArrays = "2+1";
  expect(cells(poolRemoval, rows)).toEqual([]);
});
