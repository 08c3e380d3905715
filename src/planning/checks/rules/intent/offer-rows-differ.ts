import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const offerRowsDiffer: Rule = {
  name: "offer-rows-differ",
  family: "intent",
  weight: "warn",
  meaning: "The rows of an offer have one last day and one revision: an offer can be accepted until the first of several days, and its revision is the highest.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, rows: [first, ...others] }) =>
      others.flatMap((row): Remark[] => {
        const day = (one: string | null): string => one ?? "none";
        const revision = (one: number | null): string => (one === null ? "none" : String(one));
        const remark = (column: "validUntil" | "revision", what: string, now: string, there: string): Remark[] => {
          const sentence = `${what} ${now}, but ${there} in row ${first!.row + 1} of offer ${name}. Write one for all of its rows.`;
          return now === there ? [] : [remarkAt(model, "quote", row, column, cutSentence(sentence))];
        };
        return [...remark("validUntil", "Last day", day(row.validUntil), day(first!.validUntil)), ...remark("revision", "Revision", revision(row.revision), revision(first!.revision))];
      }),
    ),
};
