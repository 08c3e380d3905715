import { gather } from "../../../plan/model";
import { cutSentence, quote } from "../../../text";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

export const unknownModel: Rule = {
  name: "unknown-model",
  family: "references",
  weight: "warn",
  meaning: "Where the table Models has rows, the model of every array is one of them: else nothing of the model is known, and no check holds the array against it.",
  mends: "Writes the one known model that differs in nothing but spaces, dashes and other marks.",
  check: (model) =>
    model.rows("models").length === 0
      ? []
      : gather(model.rows("arrays"), (row): Remark[] => {
          if (row.model === "" || model.find("models", row.model) !== null) return [];
          const alike = model.spellings.alike("models", row.model);
          const advice = alike === null ? "Add it there, or mend the name." : `Write ${alike}.`;
          const sentence = `Model ${quote(row.model)} of ${row.array} is not in the table Models, so nothing is known of it. ${advice}`;
          return [remarkAt(model, "arrays", row, "model", cutSentence(sentence), alike === null ? null : mendAt(model, "arrays", row, "model", alike))];
        }),
};
