import { offerRowsDiffer } from "../../../../../src/planning/checks/rules/intent/offer-rows-differ";
import { cells, found, sample } from "../../../../support/plan-rows";

test("tells rows of one offer that end on another day, or are of another revision", () => {
  const rows = sample();
  for (const row of rows.quote) Object.assign(row, { validUntil: "2026-09-30", revision: 2 });
  expect(cells(offerRowsDiffer, rows)).toEqual([]);
  rows.quote[1]!.validUntil = "2026-10-31";
  rows.quote[2]!.revision = null;
  expect(found(offerRowsDiffer, rows)).toEqual([
    "Quote 6 Valid until: Last day 2026-10-31, but 2026-09-30 in row 5 of offer TML-26-014. Write one for all of its rows.",
    "Quote 7 Revision: Revision none, but 2 in row 5 of offer TML-26-014. Write one for all of its rows.",
  ]);
  Object.assign(rows.quote[1]!, { offer: "TML-26-015" });
  Object.assign(rows.quote[2]!, { offer: null });
  expect(cells(offerRowsDiffer, rows)).toEqual([]);
});
