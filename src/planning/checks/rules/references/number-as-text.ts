import { quote } from "../../../text";
import { remarkOnCells } from "../../column-cells";
import { mendOn, remarkOn, type Rule } from "../../finding";

export const numberAsText: Rule = {
  name: "number-as-text",
  family: "references",
  weight: "warn",
  meaning: "Numbers stand as numbers: the sheet's own formulas refuse, or pass over, digits that are text.",
  mends: "Writes the number.",
  check: (model) =>
    remarkOnCells(
      model,
      ({ kind }) => kind === "count" || kind === "number",
      (value) => typeof value === "string",
      (cell) => {
        const { header, value, read } = cell;
        if (typeof read !== "number") return null;
        return remarkOn(model, cell, `${header} ${quote(value)} is text, which formulas do not count. Write it as a number.`, mendOn(model, cell, read));
      },
    ),
};
