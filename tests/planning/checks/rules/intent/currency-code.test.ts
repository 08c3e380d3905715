import { currencyCode } from "../../../../../src/planning/checks/rules/intent/currency-code";
import { found, sample } from "../../../../support/plan-rows";

test("asks for the code of a currency, in the quote and in the price list", () => {
  const rows = sample();
  rows.quote[0]!.currency = "€";
  rows.quote[1]!.currency = "usd";
  rows.quote[2]!.currency = null;
  rows.prices.push({ part: "ST-4", cost: 11, currency: "Euro" }, { part: "ST-5", cost: 12, currency: "JPY" });
  expect(found(currencyCode, rows)).toEqual([
    'Quote 5 Currency: Currency "€" is no code of three letters. Write one such as EUR or USD.',
    'Price list 5 Currency: Currency "Euro" is no code of three letters. Write one such as EUR or USD.',
  ]);
});
