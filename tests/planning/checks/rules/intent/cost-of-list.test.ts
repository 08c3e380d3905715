import { costOfList } from "../../../../../src/planning/checks/rules/intent/cost-of-list";
import { cells, found, mends, sample } from "../../../../support/plan-rows";

function withPrice(price: object, row: object = {}) {
  const rows = sample();
  Object.assign(rows.quote[4]!, row);
  rows.prices.push({ part: "Installation and handover", cost: 1900, currency: "EUR", list: "Spring 2026", day: "2026-03-01", ...price });
  return rows;
}

test("notes a cost that is not the one of the price list, and its mend takes cost, list and day", () => {
  expect(found(costOfList, withPrice({}))).toEqual([
    "Quote 9 Cost: Cost of Installation and handover is 1850 EUR, the price list says 1900 EUR. Take it, or leave it if you mean it.",
  ]);
  // 2026-03-01 as the sheet's calendar counts it: 2026-05-31 is 46,173, less 91 days.
  expect(mends(costOfList, withPrice({}))).toEqual(["Quote 9 Cost: 1900", "Quote 9 Price list: Spring 2026", "Quote 9 Price day: 46082"]);
});

test("finds the price by the part where the row names one, and writes the currency where it has none", () => {
  const rows = withPrice({ part: "sv-1" }, { part: "SV-1", cost: null, currency: null });
  expect(cells(costOfList, rows)).toEqual(["Quote 9 Cost"]);
  expect(mends(costOfList, rows)).toEqual(["Quote 9 Cost: 1900", "Quote 9 Currency: EUR", "Quote 9 Price list: Spring 2026", "Quote 9 Price day: 46082"]);
});

test("has no mend where the currencies differ, and says nothing where the cost is that of the list or the list has none", () => {
  expect(mends(costOfList, withPrice({ currency: "USD" }))).toEqual([]);
  expect(cells(costOfList, withPrice({ currency: "USD" }))).toEqual(["Quote 9 Cost"]);
  expect(cells(costOfList, withPrice({ cost: 1850 }))).toEqual([]);
  expect(cells(costOfList, withPrice({ cost: null }))).toEqual([]);
});
