import type { PlanRow } from "../../../plan/read";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const quotedTwice: Rule = {
  name: "quoted-twice",
  family: "intent",
  weight: "warn",
  meaning: "An array stands in one row of the kind array of the quote, by its own name or that of its site: in two its capacity would be sold twice.",
  check: (model) => {
    const seen = new Map<object, PlanRow<"quote">>();
    return model.rows("quote").flatMap((row): Remark[] => {
      if (row.kind !== "array" || row.for === "") return [];
      const own = model.find("arrays", row.for);
      const arrays = own === null ? model.rowsWith("arrays", "site", row.for) : [own];
      const twice = arrays.find((array) => seen.has(array));
      const earlier = twice === undefined ? undefined : seen.get(twice);
      for (const array of arrays) seen.set(array, row);
      if (twice === undefined || earlier === undefined) return [];
      return [remarkAt(model, "quote", row, "for", cutSentence(`${twice.array} is offered in row ${earlier.row + 1} already. Take it out of one of the two, or mend what this row is for.`))];
    });
  },
};
