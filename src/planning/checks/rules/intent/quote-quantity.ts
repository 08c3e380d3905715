import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const quoteQuantity: Rule = {
  name: "quote-quantity",
  family: "intent",
  weight: "warn",
  meaning: "The quantity of a quote row of the kind array is the number of arrays that it is for.",
  check: (model) =>
    gather(model.rows("quote"), (row): Remark[] => {
      if (row.kind !== "array" || row.for === "" || row.quantity === null) return [];
      const arrays = model.quote.arraysOf(row).length;
      if (arrays === 0 || arrays === row.quantity) return [];
      const sentence = `Quantity ${row.quantity} of ${row.item}, but ${row.for} is ${arrays} ${arrays === 1 ? "array" : "arrays"}. Mend the quantity, or name what it is for.`;
      return [remarkAt(model, "quote", row, "quantity", cutSentence(sentence))];
    }),
};
