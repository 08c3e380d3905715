import { quote } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const repeatedStep: Rule = {
  name: "repeated-step",
  family: "procedure",
  weight: "stop",
  meaning: "A step id stands once in the Steps table: records are kept by it.",
  check: (model) =>
    [...model.groupBy("steps", "stepId").values()].flatMap((rows): Remark[] =>
      rows.slice(1).map((row) => remarkAt(model, "steps", row, "stepId", `Step id ${quote(row.stepId)} stands in row ${rows[0]!.row + 1} already. Give this step an id that was never used.`)),
    ),
};
