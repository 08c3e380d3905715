import { set, type Break } from "./break";

const pastDay = [["offer-past-day", "Quote 8 Valid until"], ["offer-rows-differ", "Quote 8 Valid until"]] as const;

/** What is wrong with the rows of the quote and the price list; each break that adds a row counts on those before it. */
export const offerBreaks: readonly Break[] = [
  { what: "A margin that is a slip of the pen", change: ({ quote }) => set(quote[1], { margin: 0.99 }), found: [["margin-range", "Quote 6 Margin"]] },
  { what: "An offer that nobody can accept any more", change: ({ quote }) => set(quote[3], { validUntil: "2024-02-29" }), found: pastDay },
  {
    what: "Halves in a quantity, a discount and a tax that are no shares",
    change: ({ quote }) => void quote.push({ item: "Straps", quantity: 2.5, discount: 20, taxRate: 20 }),
    found: [["unreadable-cell", "Quote 11 Quantity"], ["unreadable-cell", "Quote 11 Discount"], ["unreadable-cell", "Quote 11 Tax rate"]],
  },
  {
    what: "A discount that is higher than the margin, which the whole offer shows",
    change: ({ quote }) => void quote.push({ item: "Moving", offer: "TML-26-015", kind: "service", quantity: 1, cost: 800, margin: 0.1, discount: 0.2, currency: "EUR" }),
    found: [["discounted-margin", "Quote 12 Discount"], ["offer-margin", "Quote 12 Offer"]],
  },
  {
    what: "An offer in two currencies",
    change: ({ quote }) => {
      const line = { offer: "TML-26-016", kind: "service", quantity: 1, cost: 100, margin: 0.2 };
      quote.push({ item: "Survey", currency: "EUR", ...line }, { item: "Survey", currency: "USD", ...line });
    },
    found: [["offer-currencies", "Quote 14 Currency"]],
  },
  {
    what: "An offer with a row that has no price, none for its tax, another last day, and is for no array",
    change: ({ quote }) => {
      const line = { offer: "TML-26-017", cost: 100, margin: 0.2, currency: "EUR" };
      quote.push({ item: "Rails", kind: "service", quantity: 2, taxRate: 0.2, validUntil: "2099-12-31", ...line }, { item: "Alder 24", kind: "array", ...line });
    },
    found: [["offer-row-unpriced", "Quote 16 Quantity"], ["tax-rate-missing", "Quote 16 Tax rate"], ["offer-rows-differ", "Quote 16 Valid until"], ["offered-for-no-array", "Quote 16 For"]],
  },
  { what: "A currency that is no code", change: ({ quote }) => void quote.push({ item: "Crate", currency: "Euro" }), found: [["currency-code", "Quote 17 Currency"]] },
  {
    what: "A cost that is not the one of the price list, in which a part stands twice",
    change: ({ quote, prices }) => {
      quote.push({ item: "Straps", part: "ST-4", cost: 9, currency: "EUR" });
      prices.push({ part: "ST-4", cost: 11, currency: "EUR", list: "Spring 2026", day: "2026-03-01" }, { part: "st-4", cost: 12, currency: "EUR" });
    },
    found: [["cost-of-list", "Quote 18 Cost"], ["price-twice", "Price list 6 Part"]],
  },
  { what: "A quantity that is not the number of arrays", change: ({ quote }) => set(quote[2], { quantity: 4 }), found: [["quote-quantity", "Quote 7 Quantity"]] },
];
