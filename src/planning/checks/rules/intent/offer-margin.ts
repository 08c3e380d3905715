import { cutSentence, formatPercent } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offerMargin: Rule = {
  name: "offer-margin",
  family: "intent",
  weight: "warn",
  meaning: "The margin of an offer as a whole, without its optional rows, is not under the setting Offer margin floor.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, rows, margin }): Remark[] => {
      const { offerMarginFloor } = model.settings;
      if (margin === null || margin.gte(offerMarginFloor)) return [];
      const sentence = `Offer ${name} has a margin of ${formatPercent(margin.toNumber())} where the floor is ${formatPercent(offerMarginFloor)}. Mend margins or discounts of its rows.`;
      return [remarkAt(model, "quote", rows[0]!, "offer", cutSentence(sentence))];
    }),
};
