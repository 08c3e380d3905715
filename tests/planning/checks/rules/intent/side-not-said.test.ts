import { sideNotSaid } from "../../../../../src/planning/checks/rules/intent/side-not-said";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a data network without a side at a site where others have one", () => {
  const rows = sample();
  rows.networks[5]!.side = null;
  expect(found(sideNotSaid, rows)).toEqual([
    "Networks 10 Side: cs-data-2 says no side, while cs-data-2-v6 is of side B: its switches are held against nothing. Write A or B.",
  ]);
});

test("takes sites where none says one, and networks for something else", () => {
  const rows = sample();
  for (const at of [4, 5, 7, 8]) rows.networks[at]!.side = null;
  expect(cells(sideNotSaid, rows)).toEqual([]);
});
