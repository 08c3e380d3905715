import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offerPastDay: Rule = {
  name: "offer-past-day",
  family: "intent",
  weight: "warn",
  meaning: "What the quote offers can still be accepted: its last day, Valid until, is today or later.",
  check: (model, today) =>
    gather(model.rows("quote"), (row): Remark[] => {
      const { validUntil } = row;
      // ISO dates stand in the order of their letters.
      if (validUntil === null || validUntil >= today) return [];
      return [remarkAt(model, "quote", row, "validUntil", cutSentence(`The offer ended on ${validUntil}. Write a new last day, or leave it blank: ${row.item}.`))];
    }),
};
