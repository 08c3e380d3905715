import { priceTwice } from "../../../../../src/planning/checks/rules/intent/price-twice";
import { found, sample } from "../../../../support/plan-rows";

test("warns of a part that stands twice in the price list, whatever its case", () => {
  const rows = sample();
  rows.prices.push({ part: "ST-4", cost: 11 }, { part: "ST-5", cost: 11 }, { part: "st-4", cost: 12 });
  expect(found(priceTwice, rows)).toEqual(['Price list 7 Part: "st-4" stands in row 5 of Price list already, and that is taken. Delete one of the two.']);
});
