import { type PlanModel, setColumns } from "../../../plan/model";
import { rowsOf, type PlanRow } from "../../../plan/read";
import { tables } from "../../../plan/schema";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const driveSetsDiffer: Rule = {
  name: "drive-sets-differ",
  family: "intent",
  weight: "warn",
  meaning: "Where Drive sets has rows of an array, its own Drives, Drive size, Scheme, Spares and Pool are empty, or say the same: the rows are what counts.",
  check: (model) =>
    rowsOf(model.plan, "arrays").flatMap((own): Remark[] => {
      const array = model.find("arrays", own.array);
      if (array?.row !== own.row || model.rowsWith("driveSets", "array", own.array).length === 0) return [];
      const other = setColumns.filter((column) => own[column] !== null && textIn(own, column) !== textIn(array, column));
      return [
        ...other.map((column) => differs(model, own, column, array.shown[tables.arrays.columns[column].header] ?? "")),
        ...(own.pool === "" || model.capacity.setsOf(array).some(({ pool }) => foldName(pool) === foldName(own.pool)) ? [] : [differs(model, own, "pool", "another pool")]),
      ];
    }),
};

function textIn(row: PlanRow<"arrays">, column: (typeof setColumns)[number]): string {
  return column === "scheme" ? (row.scheme?.name ?? "") : String(row[column] ?? "");
}

function differs(model: PlanModel, own: PlanRow<"arrays">, column: (typeof setColumns)[number] | "pool", ofSets: string): Remark {
  const { header } = tables.arrays.columns[column];
  return remarkAt(model, "arrays", own, column, cutSentence(`${header} of ${own.array} is not what its rows in Drive sets say: ${ofSets || "nothing"}. Those count: empty this cell, or mend them.`));
}
