import { gather, asReading, sizeOfReading } from "../../../plan/model";
import { cutSentence, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const readingNotCounted: Rule = {
  name: "reading-not-counted",
  family: "capacity",
  weight: "warn",
  meaning: "Every reading says of which array or pool of the plan it is, what was read and on which day: else nothing follows from it. One of a day to come counts as the latest.",
  check: (model, today) =>
    gather(model.rows("readings"), (row): Remark[] => {
      const remark = (column: "subject" | "what" | "date" | "value" | "unit", sentence: string): Remark[] => [remarkAt(model, "readings", row, column, cutSentence(sentence))];
      if (row.subject === "") return [];
      if (model.find("arrays", row.subject) === null && model.find("pools", row.subject) === null) return remark("subject", `${quote(row.subject)} is neither an array nor a pool. Mend the name.`);
      if (row.what === "") return remark("what", `What was read of ${row.subject} is not said. Write used or capacity.`);
      if (row.date !== null && row.date > today) {
        return remark("date", `The reading of ${row.subject} on ${row.date} is of a day to come, and counts as the latest. Write the day on which it was read.`);
      }
      if (row.value === null) return remark("value", `The reading of ${row.subject} has no value. Write a number, such as 42.`);
      if (sizeOfReading(row) === null) return remark(row.value < 0 ? "value" : "unit", `${row.value} ${row.unit} of ${row.subject} is no size. Write a number from 0, and a unit such as TB.`);
      if (asReading(row) === null) return remark("date", `The reading of ${row.subject} has no day. Write it as 2026-05-31.`);
      return [];
    }),
};
