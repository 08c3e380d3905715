import { quote } from "../../../text";
import { remarkOnCells } from "../../column-cells";
import { mendAt, type Rule } from "../../finding";
import { fieldOf } from "../../../plan/model";

export const numberAsText: Rule = {
  name: "number-as-text",
  family: "references",
  weight: "warn",
  meaning: "Numbers stand as numbers: the sheet's own formulas refuse, or pass over, digits that are text.",
  mends: "Writes the number.",
  check: (index) =>
    remarkOnCells(
      index,
      ({ kind }) => kind === "count" || kind === "number",
      ({ key, name, header, value, row, place }) => {
        const read = typeof value === "string" ? fieldOf(row, name) : null;
        if (typeof value !== "string" || typeof read !== "number") return null;
        const remark = { ...place, sentence: `${header} ${quote(value)} is text, which formulas do not count. Write it as a number.` };
        const mend = mendAt(index, key, row, name as never, read);
        return mend === null ? remark : { ...remark, mend };
      },
    ),
};
