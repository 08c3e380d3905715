import { offerMargin } from "../../../../../src/planning/checks/rules/intent/offer-margin";
import { cells, found, sample, set } from "../../../../support/plan-rows";

/** An offer of two lines of 100: one at cost 90, one at cost `cost`. */
function withCosts(cost: number, more: object = {}) {
  const rows = sample();
  rows.quote = [
    { item: "Survey", offer: "A-1", quantity: 1, cost: 90, margin: 0.1, currency: "EUR" },
    { item: "Moving", offer: "a-1", quantity: 1, cost, margin: 0, currency: "EUR", ...more },
  ];
  return rows;
}

test("warns of an offer that leaves less than the floor as a whole", () => {
  // 100 and 100 for a cost of 90 and 100: 5 %.
  const rows = withCosts(100);
  set(rows, "Offer margin floor", "6%");
  expect(found(offerMargin, rows)).toEqual(["Quote 5 Offer: Offer A-1 has a margin of 5% where the floor is 6%. Mend margins or discounts of its rows."]);
  set(rows, "Offer margin floor", "5%");
  expect(cells(offerMargin, rows)).toEqual([]);
});

test("counts no optional row, and says nothing where an offer has no sum", () => {
  const optional = withCosts(100, { optional: "yes" });
  set(optional, "Offer margin floor", "10%");
  expect(cells(offerMargin, optional)).toEqual([]);
  for (const more of [{ currency: "USD" }, { quantity: null }]) {
    const rows = withCosts(100, more);
    set(rows, "Offer margin floor", "50%");
    expect(cells(offerMargin, rows)).toEqual([]);
  }
});
