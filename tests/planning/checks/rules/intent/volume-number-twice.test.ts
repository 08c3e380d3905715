import { volumeNumberTwice } from "../../../../../src/planning/checks/rules/intent/volume-number-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds two volumes of one cluster that a host would see under one number", () => {
  const rows = sample();
  rows.access[1]!.number = 1;
  expect(found(volumeNumberTwice, rows)).toEqual(["Access 6 Number: scan-1 would see scans-live and scans-index under number 1. Give one of them another number."]);
});

test("takes one number in two clusters, at two hosts, and for one volume in two rows", () => {
  const rows = sample();
  rows.access.push({ volume: "masters", to: "scan-1", number: 1 }, { volume: "scans-index", to: "archive-1", number: 1 });
  rows.access.push({ volume: "SCANS-LIVE", to: "scan-2", number: 1 }, { volume: "masters", to: "archive-1" });
  rows.pools[1]!.cluster = "Deep Store";
  expect(cells(volumeNumberTwice, rows)).toEqual([]);
});
