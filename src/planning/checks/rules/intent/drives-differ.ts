import { gather, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const drivesDiffer: Rule = {
  name: "drives-differ",
  family: "intent",
  weight: "warn",
  meaning: "Where the table Drives has rows of an array, those in place are as many as its Drives, and none is smaller than its Drive size: capacity follows from the Arrays table.",
  check: (model) => [
    ...gather(model.rows("arrays"), (row): Remark[] => {
      if (model.rowsWith("drives", "array", row.array).length === 0) return [];
      const count = model.drives.inPlace(row).length;
      if (count === row.drives) return [];
      const said = row.drives === null ? "Its Drives are blank" : `Its Drives are ${row.drives}`;
      return [remarkAt(model, "arrays", row, "drives", cutSentence(`${said}, the table Drives has ${count} of ${row.array} in place. Mend the one that is wrong.`))];
    }),
    ...gather(model.rows("drives"), (row): Remark[] => {
      const wanted = smallestOf(model, row);
      if (row.takenOut !== null || row.size === null || wanted === null || row.size >= wanted) return [];
      return [remarkAt(model, "drives", row, "size", cutSentence(`This drive is smaller than the Drive size of ${row.array}, from which its capacity is worked out. Mend one of the two.`))];
    }),
  ],
};

/** Finds the smallest drive size of an array and its sets; null where one of them does not say. */
function smallestOf(model: PlanModel, { array }: PlanRow<"drives">): bigint | null {
  const row = model.find("arrays", array);
  if (row === null) return null;
  return model.capacity.setsOf(row).map(({ driveSize }): bigint | null => driveSize).reduce((least, size) => (least === null || size === null ? null : size < least ? size : least));
}
