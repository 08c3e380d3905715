import { gather, shelfLabel, type PlanModel } from "../../../plan/model";
import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const baysNotKnown: Rule = {
  name: "bays-not-known",
  family: "intent",
  weight: "note",
  meaning: "Models and shelves say how many bays they have, and drives in which they sit: else nobody can say whether the drives fit.",
  check: (model) => [
    ...gather(model.rows("models"), (row): Remark[] => {
      const arrays = model.rowsWith("arrays", "model", row.model).filter(({ drives }) => drives !== null);
      if (row.bays !== null || arrays.length === 0) return [];
      const names = arrays.map(({ array }) => array).join(", ");
      return [remarkAt(model, "models", row, "bays", cutSentence(`How many bays ${row.model} has is blank: held against nothing are the drives of ${names}.`))];
    }),
    ...gather(model.rows("shelves"), (row): Remark[] => {
      if (row.bays !== null) return [];
      return [remarkAt(model, "shelves", row, "bays", cutSentence(`How many bays ${shelfLabel(row)} has is blank, so drives are held against nothing there. Write it.`))];
    }),
    ...gather(model.rows("arrays"), (row): Remark[] => {
      if (model.find("models", row.model) !== null || !model.drives.inPlace(row).some(({ shelf }) => shelf === "")) return [];
      const sentence = `How many bays ${row.array} has is not known, so its drives are held against nothing. Add its model to the table Models.`;
      return [remarkAt(model, "arrays", row, "model", cutSentence(sentence))];
    }),
    ...strays(model),
  ],
};

/** Speaks once of the drives in place of an array that say no bay. */
function strays(model: PlanModel): Remark[] {
  return gather(model.rows("arrays"), (array): Remark[] => {
    const [first, ...others] = model.drives.inPlace(array).filter(({ bay }) => bay === null);
    if (first === undefined) return [];
    const drives = andMore(`this drive of ${array.array}`, others.length);
    return [remarkAt(model, "drives", first, "bay", cutSentence(`In which bay ${drives} sits is blank, so no tab expects its serial number. Write the bay.`))];
  });
}
