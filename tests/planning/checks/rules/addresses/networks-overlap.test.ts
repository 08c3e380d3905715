import { networksOverlap } from "../../../../../src/planning/checks/rules/addresses/networks-overlap";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds networks that overlap, at the later row", () => {
  const rows = sample();
  rows.networks[3]!.prefix = "10.64.11.128/25";
  rows.networks[8]!.prefix = "fd6b:41c2:9e07:31:8000::/65";
  expect(found(networksOverlap, rows)).toEqual([
    "Networks 8 Prefix: 10.64.11.128/25 of bi-data-2 overlaps 10.64.11.0/24 of rr-data-1. Give networks that are apart.",
    "Networks 13 Prefix: fd6b:41c2:9e07:31:8000::/65 of cs-data-2-v6 overlaps fd6b:41c2:9e07:31::/64 of cs-data-1-v6. Give networks that are apart.",
  ]);
});

test("says so once for each network, even where many overlap", () => {
  const rows = sample();
  for (const row of rows.networks.slice(0, 6)) row.prefix = "10.64.11.0/24";
  expect(cells(networksOverlap, rows)).toEqual([6, 7, 8, 9, 10].map((row) => `Networks ${row} Prefix`));
});

test("takes the same prefix in another routing table, and networks side by side", () => {
  const rows = sample();
  Object.assign(rows.networks[3]!, { prefix: "10.64.11.0/24", routing: "scans" });
  rows.networks[4]!.prefix = "10.64.10.0/24";
  expect(cells(networksOverlap, rows)).toEqual([]);
});
