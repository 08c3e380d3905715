import { poolDomain } from "../../../../../src/planning/checks/rules/resilience/pool-domain";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a rack whose loss the scheme across the arrays does not survive", () => {
  const rows = sample();
  rows.arrays[1]!.rack = "RR-R1";
  expect(found(poolDomain, rows)).toEqual(["Pools 5 Across arrays: 2 copies over Scans does not survive the loss of rack RR-R1, which takes 2 of its 4 arrays. Spread them."]);
});

test("finds a feed and a switch on which too many arrays hang alone", () => {
  const rows = sample();
  rows.arrays[0]!.feedB = null;
  rows.arrays[1]!.feedB = "RR-A";
  for (const row of rows.ports) if (row.array === "bi-array-1" || row.array === "bi-array-2") row.switch = "bi-sw1";
  expect(found(poolDomain, rows)).toEqual([expect.stringContaining("loss of feed RR-A"), expect.stringContaining("loss of switch bi-sw1")]);
});

test("takes a scheme that survives two arrays at once", () => {
  const rows = sample();
  rows.arrays[1]!.rack = "RR-R1";
  rows.pools[0]!.acrossArrays = "3 copies";
  expect(cells(poolDomain, rows)).toEqual([]);
});

test("says nothing of arrays whose place is not planned yet", () => {
  const rows = sample();
  for (const row of rows.arrays) row.rack = null;
  expect(cells(poolDomain, rows)).toEqual([]);
});

test("counts an array as lost with the rack of one of its shelves, or with the one feed on which a shelf hangs", () => {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", rack: "RR-R2", feedA: "BI-A" }];
  for (const row of rows.arrays) if (row.array === "bi-array-1") row.feedB = null;
  expect(found(poolDomain, rows)).toEqual([
    "Pools 5 Across arrays: 2 copies over Scans does not survive the loss of rack RR-R2, which takes 2 of its 4 arrays. Spread them.",
    "Pools 5 Across arrays: 2 copies over Scans does not survive the loss of feed BI-A, which takes 2 of its 4 arrays. Spread them.",
  ]);
  rows.shelves[0]!.feedB = "BI-B";
  rows.shelves[0]!.rack = "RR-R1";
  expect(cells(poolDomain, rows)).toEqual([]);
});
