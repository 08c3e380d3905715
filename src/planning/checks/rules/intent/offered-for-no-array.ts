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
        const sites = model.quote.namesIn(row);
        // A name that the plan does not have is told by the rule for names.
        if (row.kind !== "array" || row.optional === "yes" || model.quote.arraysOf(row).length > 0 || sites.some((site) => model.find("sites", site) === null)) return [];
        const without = sites.length === 0 ? `${row.item} is for no array` : `${row.for} has no arrays`;
        return [remarkAt(model, "quote", row, "for", cutSentence(`${without}, so offer ${name} has no price of a TB. Write an array, or a site with arrays.`))];
      }),
    ),
};
