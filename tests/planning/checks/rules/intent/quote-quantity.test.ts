import { quoteQuantity } from "../../../../../src/planning/checks/rules/intent/quote-quantity";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a quantity that is not the number of arrays that the row is for", () => {
  const rows = sample();
  rows.quote[2]!.quantity = 4;
  rows.quote[0]!.quantity = 1;
  expect(found(quoteQuantity, rows)).toEqual([
    "Quote 5 Quantity: Quantity 1 of Two Alder 24, prepared, but Reading Room is 2 arrays. Mend the quantity, or name what it is for.",
    "Quote 7 Quantity: Quantity 4 of Alder 24, prepared, but cs-array-1 is 1 array. Mend the quantity, or name what it is for.",
  ]);
});

test("takes services in any quantity, and rows for nothing the plan knows", () => {
  const rows = sample();
  rows.quote[4]!.quantity = 9;
  Object.assign(rows.quote[2]!, { for: null, quantity: 4 });
  expect(cells(quoteQuantity, rows)).toEqual([]);
});

test("counts the arrays of a list, each once", () => {
  const rows = sample();
  Object.assign(rows.quote[2]!, { for: "cs-array-1, cs-array-2, cs-array-1", quantity: 2 });
  expect(cells(quoteQuantity, rows)).toEqual([]);
  Object.assign(rows.quote[2]!, { quantity: 3 });
  expect(cells(quoteQuantity, rows)).toEqual(["Quote 7 Quantity"]);
});
