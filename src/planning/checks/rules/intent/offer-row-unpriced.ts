import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offerRowUnpriced: Rule = {
  name: "offer-row-unpriced",
  family: "intent",
  weight: "warn",
  meaning: "Every row of an offer has a quantity, a cost, a margin and a currency: without one of them the offer has no total and is not issued.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, rows }) =>
      rows.flatMap((row): Remark[] => {
        const column = (["quantity", "cost", "margin", "currency"] as const).find((one) => row[one] === null || row[one] === "");
        if (column === undefined) return [];
        return [remarkAt(model, "quote", row, column, cutSentence(`${row.item} has no ${column}, so offer ${name} has no total. Write it, or take the row out of the offer.`))];
      }),
    ),
};
