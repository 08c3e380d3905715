import { rackOutlets } from "../../../../../src/planning/checks/rules/facility/rack-outlets";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a plug for which the rack has no outlet", () => {
  const rows = sample();
  rows.arrays[0]!.plug = "C20";
  rows.racks[0]!.outlets = "12 x C13";
  expect(cells(rackOutlets, rows)).toEqual(["Arrays 5 Plug"]);
});

test("finds too few outlets: one cord a supply", () => {
  const rows = sample();
  rows.racks[4]!.outlets = "3 x C13; 8 x C19";
  expect(found(rackOutlets, rows)).toEqual(["Racks 9 Outlets: CS-R1 has 3 x C13, its arrays need 4. Add outlets or move an array."]);
});

test("finds outlets that cannot be read", () => {
  const rows = sample();
  rows.racks[0]!.outlets = "plenty";
  expect(cells(rackOutlets, rows)).toEqual(["Racks 5 Outlets"]);
});

test("takes just enough, outlets of other kinds by their own name, and a rack that names none", () => {
  const rows = sample();
  rows.racks[4]!.outlets = "2 x C13, 2 × c13";
  rows.racks[0]!.outlets = "2 x Type F";
  rows.arrays[0]!.plug = "type f";
  rows.racks[1]!.outlets = null;
  expect(cells(rackOutlets, rows)).toEqual([]);
});

test("names the plug and the outlets that it does not fit", () => {
  const rows = sample();
  rows.arrays[0]!.plug = "C20";
  rows.racks[0]!.outlets = "12 x C13";
  expect(found(rackOutlets, rows)).toEqual(['Arrays 5 Plug: Plug "C20" of rr-array-1 fits none of the outlets of RR-R1 (12 x C13). Plan other cords.']);
});

test("counts only cords that have a feed, and adds up outlets that are written in parts", () => {
  const rows = sample();
  rows.racks[0]!.outlets = "1 x C13";
  rows.arrays[0]!.feedB = null;
  expect(cells(rackOutlets, rows)).toEqual([]);
  rows.arrays[0]!.feedB = "RR-B";
  expect(cells(rackOutlets, rows)).toEqual(["Racks 5 Outlets"]);
  rows.racks[0]!.outlets = "1 x C13, 2 x C19; 1 x C13";
  expect(cells(rackOutlets, rows)).toEqual([]);
});

// IEC 60320: a plug C14 fits an outlet C13, a plug C20 an outlet C19.
test("takes a C20 plug for a C19 outlet, and counts it there", () => {
  const rows = sample();
  rows.arrays[0]!.plug = "C20";
  rows.racks[0]!.outlets = "2 x C19";
  expect(cells(rackOutlets, rows)).toEqual([]);
  rows.racks[0]!.outlets = "12 x C13, 1 x C19";
  expect(found(rackOutlets, rows)).toEqual(["Racks 5 Outlets: RR-R1 has 1 x C19, its arrays need 2. Add outlets or move an array."]);
});

test("says how outlets are written", () => {
  const rows = sample();
  rows.racks[0]!.outlets = "plenty";
  expect(found(rackOutlets, rows)).toEqual(['Racks 5 Outlets: Outlets "plenty" cannot be read. Write them as 12 x C13, 4 x C19.']);
});
