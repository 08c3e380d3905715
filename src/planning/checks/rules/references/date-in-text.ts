import { isoDateOf } from "../../../../sheet";
import { remarkOnCells } from "../../column-cells";
import { remarkOn, type Rule } from "../../finding";

/** A number that is a day outside of these is more likely a number. */
const [firstDay, lastDay] = ["2000-01-01", "2099-12-31"];

export const dateInText: Rule = {
  name: "date-in-text",
  family: "references",
  weight: "warn",
  meaning: "A text column holds no date number, which is what a sheet makes of a text such as 1-2 in a cell that is not text.",
  check: (model) =>
    remarkOnCells(
      model,
      ({ kind }, key) => kind === "text" && key !== "settings",
      (value): value is number => typeof value === "number" && Number.isInteger(value),
      (cell) => {
        const { value, header } = cell;
        const day = isoDateOf(value);
        if (day === null || day < firstDay || day > lastDay) return null;
        return remarkOn(model, cell, `${header} holds the number ${value}, perhaps a text that turned into the date ${day}. Set text format and type it again.`);
      },
    ),
};
