import { discountedMargin } from "../../../../../src/planning/checks/rules/intent/discounted-margin";
import { cells, found, sample, set } from "../../../../support/plan-rows";

function withDiscount(discount: number | null) {
  const rows = sample();
  rows.quote[2]!.discount = discount;
  return rows;
}

test("warns of a discount that takes more than the margin", () => {
  // 22,150 / (1 - 0.2) = 27,687.50; a quarter off leaves 20,765.63, and 1 - 22,150 / 20,765.63 is -6.67 %.
  expect(found(discountedMargin, withDiscount(0.25))).toEqual([
    "Quote 7 Discount: Discount 25% leaves a margin of -6.67% where the floor is 0%. Take less off, or mend the setting: Alder 24, prepared.",
  ]);
  expect(cells(discountedMargin, withDiscount(1))).toEqual(["Quote 7 Discount"]);
});

test("takes a discount that leaves the floor of the settings itself: 20 % less a fifth of the price is nothing", () => {
  expect(cells(discountedMargin, withDiscount(0.2))).toEqual([]);
  const rows = withDiscount(0.1);
  set(rows, "Margin floor", "12%");
  expect(cells(discountedMargin, rows)).toEqual(["Quote 7 Discount"]);
  set(rows, "Margin floor", "11.1%");
  expect(cells(discountedMargin, rows)).toEqual([]);
});

test("leaves to its own rule a margin that is under the floor without any discount", () => {
  const rows = withDiscount(0.02);
  set(rows, "Margin floor", "25%");
  expect(cells(discountedMargin, rows)).toEqual([]);
});

test("warns of a price that rounding takes under the floor: small parts by the thousand, and yen", () => {
  const priced = (cost: number, currency: string) => {
    const rows = withDiscount(null);
    Object.assign(rows.quote[2]!, { cost, currency, margin: 0.2, quantity: 1000 });
    return found(discountedMargin, rows);
  };
  // 0.003 / 0.8 is 0.00375, which is no cent; 1.1 / 0.8 is 1.375, which is one yen.
  expect(priced(0.003, "EUR")).toEqual(["Quote 7 Cost: Rounding to 0.01 each leaves nothing of the price where the floor is 0%. Quote several as one: Alder 24, prepared."]);
  expect(priced(1.1, "JPY")).toEqual(["Quote 7 Cost: Rounding to 1 each leaves a margin of -10% where the floor is 0%. Quote several as one: Alder 24, prepared."]);
  expect(priced(0.003, "CLF")).toEqual([]);
  expect(priced(1.1, "EUR")).toEqual([]);
});
