import { taxRateMissing } from "../../../../../src/planning/checks/rules/intent/tax-rate-missing";
import { cells, found, sample } from "../../../../support/plan-rows";

test("warns of a row without a tax rate where others of its offer have one; 0 % is one", () => {
  const rows = sample();
  rows.quote[4]!.taxRate = null;
  rows.quote[5]!.taxRate = 0;
  expect(found(taxRateMissing, rows)).toEqual([
    "Quote 9 Tax rate: Installation and handover has no tax rate, others of offer TML-26-014 have one. Write it, or 0% where there is none.",
  ]);
});

test("says nothing of an offer in which nobody speaks of tax", () => {
  const rows = sample();
  for (const row of rows.quote) row.taxRate = null;
  expect(cells(taxRateMissing, rows)).toEqual([]);
});
