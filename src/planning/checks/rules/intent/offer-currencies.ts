import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offerCurrencies: Rule = {
  name: "offer-currencies",
  family: "intent",
  weight: "warn",
  meaning: "The rows of an offer are in one currency: several are added up each apart, and the offer has no total, no margin and no price of a TB.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, byCurrency: [first, ...others] }): Remark[] =>
      others.flatMap(({ currency, lines, optional }): Remark[] => {
        const row = [...lines, ...optional].map((line) => line.row).sort((a, b) => a.row - b.row)[0]!;
        const also = currency === "" ? "also has rows without a currency" : `is also in ${currency}`;
        return [remarkAt(model, "quote", row, "currency", cutSentence(`Offer ${name}, in ${first!.currency}, ${also}, and the two have no sum. Write one currency, or make two offers.`))];
      }),
    ),
};
