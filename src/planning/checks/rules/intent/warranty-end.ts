import { sheetDayOf } from "../../../../sheet";
import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const warrantyEnd: Rule = {
  name: "warranty-end",
  family: "intent",
  weight: "note",
  meaning: "The warranty of an array lasts longer than the setting Warranty notice days; then there is time to prolong it or to plan what follows.",
  check: (model, today) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      if (row.warrantyUntil === null) return [];
      const [last, now] = [sheetDayOf(row.warrantyUntil), sheetDayOf(today)];
      if (last === null || now === null || last - now > model.settings.warrantyNoticeDays) return [];
      const [when, days] = [last < now ? "ended" : "ends", Math.abs(last - now)];
      const away = days === 0 ? "today" : `${days} ${days === 1 ? "day" : "days"} ${last < now ? "ago" : "from now"}`;
      const sentence = `The warranty of ${row.array} ${when} on ${row.warrantyUntil}, ${away}. Prolong it, or plan what follows.`;
      return [remarkAt(model, "arrays", row, "warrantyUntil", cutSentence(sentence))];
    }),
};
