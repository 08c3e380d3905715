import { driveLabel, shelfLabel, type PlanCell, type PlanModel } from "../../../plan/model";
import { cutSentence, foldName, quote } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const serialTwice: Rule = {
  name: "serial-twice",
  family: "intent",
  weight: "warn",
  meaning: "Arrays, shelves and the drives in place have serial numbers of their own: a tab would expect one thing at two places.",
  check: (model) => {
    const seen = new Map<string, string>();
    return bearersOf(model).flatMap(({ serial, label, cell }): Remark[] => {
      const key = foldName(serial);
      const other = seen.get(key);
      if (other === undefined) seen.set(key, label);
      return other === undefined ? [] : [remarkOn(model, cell, cutSentence(`Serial ${quote(serial)} is that of ${other} already, here it is that of ${label}. Read both labels and mend one.`))];
    });
  },
};

interface Bearer {
  readonly serial: string;
  readonly label: string;
  readonly cell: PlanCell;
}

function bearersOf(model: PlanModel): Bearer[] {
  const drives = model.rows("drives").filter(({ takenOut }) => takenOut === null);
  return [
    ...model.rows("arrays").map(({ serial, array, row }) => ({ serial, label: array, cell: { table: "arrays", row, column: "serial" } as const })),
    ...model.rows("shelves").map((shelf) => ({ serial: shelf.serial, label: shelfLabel(shelf), cell: { table: "shelves", row: shelf.row, column: "serial" } as const })),
    ...drives.map((drive) => ({ serial: drive.serial, label: driveLabel(drive), cell: { table: "drives", row: drive.row, column: "serial" } as const })),
  ].filter(({ serial }) => serial !== "");
}
