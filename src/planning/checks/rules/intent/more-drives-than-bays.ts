import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const moreDrivesThanBays: Rule = {
  name: "more-drives-than-bays",
  family: "intent",
  weight: "stop",
  meaning: "An array has no more drives than bays: those of its chassis by its model, and those of its shelves.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const bays = model.drives.baysOf(row);
      if (bays === null || row.drives === null || row.drives <= bays) return [];
      const shelves = model.drives.shelvesOf(row).length;
      const beside = shelves === 0 ? "" : `, those of ${shelves === 1 ? "its shelf" : `its ${shelves} shelves`} included`;
      return [remarkAt(model, "arrays", row, "drives", cutSentence(`${row.array} has ${row.drives} drives and ${bays} bays${beside}. Plan fewer, or a shelf more.`))];
    }),
};
