import { offerCurrencies } from "../../../../../src/planning/checks/rules/intent/offer-currencies";
import { cells, found, sample } from "../../../../support/plan-rows";

test("tells an offer in two currencies, at its first row in the other, and no offer in one however it is spelt", () => {
  const rows = sample();
  rows.quote[4]!.currency = "eur";
  expect(cells(offerCurrencies, rows)).toEqual([]);
  rows.quote[3]!.currency = "USD";
  rows.quote[5]!.currency = "usd";
  expect(found(offerCurrencies, rows)).toEqual([
    "Quote 8 Currency: Offer TML-26-014, in EUR, is also in USD, and the two have no sum. Write one currency, or make two offers.",
  ]);
});
