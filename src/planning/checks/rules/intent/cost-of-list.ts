import { cutSentence } from "../../../text";
import { remarkAt, type Mend, type Remark, type Rule } from "../../finding";

export const costOfList: Rule = {
  name: "cost-of-list",
  family: "intent",
  weight: "note",
  meaning: "The cost of a quote row is the one that the price list has for its part, or for its item where it names no part.",
  mends: "Writes the cost, its list and the day of that.",
  check: (model) =>
    model.quote.listPrices().flatMap((found): Remark[] => {
      const { row, price, hasSameCurrency } = found;
      if (hasSameCurrency && row.cost === price.cost) return [];
      const said = `${String(price.cost)} ${price.currency}`.trim();
      const now = row.cost === null ? "is blank" : `is ${row.cost} ${row.currency}`.trim();
      const sentence = `Cost of ${row.item} ${now}, the price list says ${said}. ${hasSameCurrency ? "Take it, or leave it if you mean it" : "It is in another currency: write the cost in yours"}.`;
      const mend: Mend | null = hasSameCurrency ? { description: `Write ${said} into Cost, with its list and day.`, writes: model.quote.costWrites(found) } : null;
      return [remarkAt(model, "quote", row, "cost", cutSentence(sentence), mend)];
    }),
};
