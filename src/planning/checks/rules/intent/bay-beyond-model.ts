import { gather, driveLabel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const bayBeyondModel: Rule = {
  name: "bay-beyond-model",
  family: "intent",
  weight: "stop",
  meaning: "A drive sits in a bay that its chassis has by its model, or its shelf by its own row; bays are counted from 1.",
  check: (model) =>
    gather(model.rows("drives"), (row): Remark[] => {
      if (row.takenOut !== null || row.bay === null) return [];
      const bays = model.drives.baysBeside(row);
      if (row.bay >= 1 && (bays === null || row.bay <= bays)) return [];
      const sentence = row.bay < 1 ? `There is no ${driveLabel(row)}: bays are counted from 1.` : `There is no ${driveLabel(row)}: it has bays 1 to ${bays}. Write one of them.`;
      return [remarkAt(model, "drives", row, "bay", cutSentence(sentence))];
    }),
};
