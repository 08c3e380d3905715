import { offerRowUnpriced } from "../../../../../src/planning/checks/rules/intent/offer-row-unpriced";
import { cells, found, sample } from "../../../../support/plan-rows";

test.each(["quantity", "cost", "margin", "currency"])("warns of a row of an offer without a %s, and of none that is in no offer", (column) => {
  const rows = sample();
  rows.quote[1]![column] = null;
  expect(found(offerRowUnpriced, rows)).toEqual([
    `Quote 6 ${column[0]!.toUpperCase()}${column.slice(1)}: Two Rowan 12, prepared has no ${column}, so offer TML-26-014 has no total. Write it, or take the row out of the offer.`,
  ]);
  rows.quote[1]!.offer = null;
  expect(cells(offerRowUnpriced, rows)).toEqual([]);
});
