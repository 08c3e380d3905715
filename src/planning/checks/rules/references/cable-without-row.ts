import { cutSentence } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const cableWithoutRow: Rule = {
  name: "cable-without-row",
  family: "references",
  weight: "note",
  meaning: "Once Cables has rows, every cable of the plan that is known from end to end has one.",
  check: (model) => {
    const [row] = model.rows("cables");
    const [first, ...others] = row === undefined ? [] : model.cables.unlisted();
    if (row === undefined || first === undefined) return [];
    const many = others.length === 0 ? "has" : `and ${others.length} more have`;
    return [remarkAt(model, "cables", row, "id", cutSentence(`The cable from ${first.from} to ${first.to} ${many} no row here. Choose Write cables.`))];
  },
};
