import { cutSentence } from "../../../text";
import { remarkAt, remarkOn, type Remark, type Rule } from "../../finding";

export const assumedValue: Rule = {
  name: "assumed-value",
  family: "intent",
  weight: "warn",
  meaning: "What set-up assumed is looked at: the cell says what is so, or Assumptions says that it is settled.",
  check: (model) => {
    const reliedOn = model.assumptions.reliedOn();
    return [
      ...model.assumptions.open().flatMap((assumed): Remark[] => {
        const { by, cell, header } = assumed;
        return reliedOn.has(assumed) ? [] : [remarkOn(model, cell, cutSentence(`${header} of ${by.named} is assumed: ${by.value}. Write what is so, or tick Settled in Assumptions.`))];
      }),
      ...model.assumptions.lost().map((by) => {
        return remarkAt(model, "assumptions", by, "named", cutSentence(`${by.table} has no row ${by.named} with a column ${by.column}. Correct it, or delete this row.`));
      }),
    ];
  },
};
