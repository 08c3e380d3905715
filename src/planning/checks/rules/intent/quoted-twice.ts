import { gather, isOneOffer } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const quotedTwice: Rule = {
  name: "quoted-twice",
  family: "intent",
  weight: "warn",
  meaning: "An array stands in one row of the kind array of an offer, by its own name or that of its site: in two its capacity would be sold twice. What is optional does not count.",
  check: (model) => {
    // Of every array the first row of each offer, and of those in none.
    const seen = new Map<object, Map<string, PlanRow<"quote">>>();
    return gather(model.rows("quote"), (row): Remark[] => {
      if (row.kind !== "array" || row.for === "" || row.optional === "yes") return [];
      const arrays = model.quote.arraysOf(row);
      const [twice] = arrays.flatMap((one) => {
        const earlier = [...(seen.get(one)?.values() ?? [])].find((other) => isOneOffer(other, row));
        return earlier === undefined ? [] : [{ array: one.array, earlier }];
      });
      for (const array of arrays) {
        const byOffer = seen.get(array) ?? new Map<string, PlanRow<"quote">>();
        if (!byOffer.has(foldName(row.offer))) byOffer.set(foldName(row.offer), row);
        seen.set(array, byOffer);
      }
      if (twice === undefined) return [];
      const sentence = `${twice.array} is offered in row ${twice.earlier.row + 1} already. Take it out of one of the two, or mend what this row is for.`;
      return [remarkAt(model, "quote", row, "for", cutSentence(sentence))];
    });
  },
};
