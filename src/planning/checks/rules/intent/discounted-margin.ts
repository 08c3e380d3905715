import { gather } from "../../../plan/model";
import { smallestAmount } from "../../../pricing";
import { cutSentence, formatPercent } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

/** Share by which rounding to the smallest amount of a currency may miss the floor before it is told: a cent of a few euros is nobody's loss. */
const roundedFrom = 0.01;

export const discountedMargin: Rule = {
  name: "discounted-margin",
  family: "intent",
  weight: "warn",
  meaning: "What the discount, and rounding to the smallest amount of the currency, leave of the margin of a quote row is not under the setting Margin floor.",
  check: (model) =>
    gather(model.rows("quote"), (row): Remark[] => {
      const line = model.quote.lineOf(row);
      const { marginFloor } = model.settings;
      // A margin that is too low by itself is told where it stands.
      if (line === null || row.margin === null || row.margin < marginFloor) return [];
      const isDiscounted = row.discount !== null && row.discount > 0;
      if (line.margin === null ? line.cost.isZero() : line.margin.gte(isDiscounted ? marginFloor : marginFloor - roundedFrom)) return [];
      const left = line.margin === null ? "nothing of the price" : `a margin of ${formatPercent(line.margin.toNumber())}`;
      const taken = isDiscounted ? `Discount ${formatPercent(row.discount)}` : `Rounding to ${smallestAmount(line.currency).toFixed()} each`;
      const instead = isDiscounted ? "Take less off, or mend the setting" : "Quote several as one";
      const sentence = `${taken} leaves ${left} where the floor is ${formatPercent(marginFloor)}. ${instead}: ${row.item}.`;
      return [remarkAt(model, "quote", row, isDiscounted ? "discount" : "cost", cutSentence(sentence))];
    }),
};
