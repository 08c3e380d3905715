import { gather } from "../../../plan/model";
import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const loadNotKnown: Rule = {
  name: "load-not-known",
  family: "facility",
  weight: "note",
  meaning: "Every array and switch on a feed says what it draws, itself or by its model: else its watts are in no load of a feed and in no heat of a rack.",
  check: (model) =>
    gather(model.rows("feeds"), (row): Remark[] => {
      const [first, ...others] = model.power.silentOn(row);
      if (first === undefined) return [];
      return [remarkAt(model, "feeds", row, "feed", cutSentence(`The load of ${row.feed} leaves out ${andMore(first, others.length)}, whose Watts are blank. Write them there, or for its model.`))];
    }),
};
