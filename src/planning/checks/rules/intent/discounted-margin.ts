import { cutSentence, formatPercent } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const discountedMargin: Rule = {
  name: "discounted-margin",
  family: "intent",
  weight: "warn",
  meaning: "What the discount leaves of the margin of a quote row is not under the setting Margin floor.",
  check: (model) =>
    model.rows("quote").flatMap((row): Remark[] => {
      const line = model.quote.lineOf(row);
      const { marginFloor } = model.settings;
      // A margin that is too low by itself is told where it stands.
      if (line === null || row.discount === null || row.discount === 0 || row.margin === null || row.margin < marginFloor) return [];
      if (line.margin === null ? line.cost.isZero() : line.margin.gte(marginFloor)) return [];
      const left = line.margin === null ? "nothing of the price" : `a margin of ${formatPercent(line.margin.toNumber())}`;
      const sentence = `Discount ${formatPercent(row.discount)} leaves ${left} where the floor is ${formatPercent(marginFloor)}. Take less off, or mend the setting: ${row.item}.`;
      return [remarkAt(model, "quote", row, "discount", cutSentence(sentence))];
    }),
};
