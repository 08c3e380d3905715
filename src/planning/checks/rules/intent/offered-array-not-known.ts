import { cutSentence, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offeredArrayNotKnown: Rule = {
  name: "offered-array-not-known",
  family: "intent",
  weight: "warn",
  meaning: "A quote row of the kind array that is in an offer says for which array or site of the plan it is: without, the offer has no price of a TB.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, rows }) =>
      rows.flatMap((row): Remark[] => {
        if (row.kind !== "array" || row.optional === "yes" || model.quote.arraysOf(row).length > 0) return [];
        const unknown = row.for === "" ? `${row.item} is for no array` : `The plan has no array and no site ${quote(row.for)}`;
        return [remarkAt(model, "quote", row, "for", cutSentence(`${unknown}, so offer ${name} has no price of a TB. Write an array or a site with arrays.`))];
      }),
    ),
};
