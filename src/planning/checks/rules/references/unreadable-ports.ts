import { parseControllerNames, parsePortNames } from "../../../addressing";
import { refusalOf } from "../../../plan/model";
import { rowsOf } from "../../../plan/read";
import { remarkAt, type Remark, type Rule } from "../../finding";

const read = { controllers: (text: string) => parseControllerNames(text, "Controllers"), ports: (text: string) => parsePortNames(text, "Ports") } as const;

export const unreadablePorts: Rule = {
  name: "unreadable-ports",
  family: "references",
  weight: "stop",
  meaning: "Controllers and Ports of a model or an array say how many, or names that differ: else it has no ports that anybody could plan or check.",
  check: (model) =>
    (["models", "arrays"] as const).flatMap((key) =>
      // An array as its own row says: what its model says is told once, there.
      rowsOf(model.plan, key).flatMap((row) =>
        (["controllers", "ports"] as const).flatMap((column): Remark[] => {
          const refusal = row[column] === "" ? null : refusalOf(() => read[column](row[column]));
          return refusal === null ? [] : [remarkAt(model, key, row, column, refusal)];
        }),
      ),
    ),
};
