import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offeredForNoArray: Rule = {
  name: "offered-for-no-array",
  family: "intent",
  weight: "warn",
  meaning: "A quote row of the kind array that is in an offer says for which array, or site with arrays, it is: without, the offer has no price of a TB.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, rows }) =>
      rows.flatMap((row): Remark[] => {
        const isSite = model.find("sites", row.for) !== null;
        // A name that the plan does not have is told by the rule for names.
        if (row.kind !== "array" || row.optional === "yes" || model.quote.arraysOf(row).length > 0 || (row.for !== "" && !isSite)) return [];
        const without = isSite ? `${row.for} has no arrays` : `${row.item} is for no array`;
        return [remarkAt(model, "quote", row, "for", cutSentence(`${without}, so offer ${name} has no price of a TB. Write an array, or a site with arrays.`))];
      }),
    ),
};
