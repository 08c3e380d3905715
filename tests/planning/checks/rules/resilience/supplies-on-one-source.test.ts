import { suppliesOnOneSource } from "../../../../../src/planning/checks/rules/resilience/supplies-on-one-source";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a device whose two feeds hang on one source", () => {
  const rows = sample();
  rows.feeds[1]!.source = "Reading Room UPS";
  expect(cells(suppliesOnOneSource, rows)).toEqual(["Arrays 5 Feed B", "Arrays 6 Feed B", "Switches 5 Feed B", "Switches 6 Feed B"]);
});

test("takes feeds whose sources are not known, and leaves one feed to another rule", () => {
  const rows = sample();
  rows.feeds[0]!.source = null;
  rows.feeds[1]!.source = null;
  rows.arrays[2]!.feedB = "BI-A";
  expect(cells(suppliesOnOneSource, rows)).toEqual([]);
});

test("finds a shelf whose two feeds hang on one source", () => {
  const rows = sample();
  rows.feeds[1]!.source = "Reading Room UPS";
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", feedA: "RR-A", feedB: "RR-B" }];
  expect(cells(suppliesOnOneSource, rows)).toContain("Shelves 5 Feed B");
});
