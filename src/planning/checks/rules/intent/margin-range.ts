import { gather } from "../../../plan/model";
import { cutSentence, formatPercent } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const marginRange: Rule = {
  name: "margin-range",
  family: "intent",
  weight: "warn",
  meaning: "The margin of a quote row lies between the settings Margin floor and Margin ceiling; at 99 % a price is a hundred times its cost.",
  check: (model) =>
    gather(model.rows("quote"), (row): Remark[] => {
      const { margin } = row;
      const { marginFloor, marginCeiling } = model.settings;
      if (margin === null || (margin >= marginFloor && margin <= marginCeiling)) return [];
      const bound = margin < marginFloor ? `under the floor of ${formatPercent(marginFloor)}` : `over the ceiling of ${formatPercent(marginCeiling)}`;
      const sentence = `Margin ${formatPercent(margin)} is ${bound}. Mend it, or the setting: ${row.item}.`;
      return [remarkAt(model, "quote", row, "margin", cutSentence(sentence))];
    }),
};
