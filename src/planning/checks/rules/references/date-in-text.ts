import { remarkOnCells } from "../../column-cells";
import { remarkOn, type Rule } from "../../finding";

/** Days of the sheet's calendar from 2000-01-01 to 2099-12-31. */
const firstDay = 36_526;
const lastDay = 73_050;

export const dateInText: Rule = {
  name: "date-in-text",
  family: "references",
  weight: "warn",
  meaning: "A text column holds no date number, which is what a sheet makes of a text such as 1-2 in a cell that is not text.",
  check: (model) =>
    remarkOnCells(
      model,
      ({ kind }, key) => kind === "text" && key !== "settings",
      (cell) => {
        const { value, header } = cell;
        if (typeof value !== "number" || !Number.isInteger(value) || value < firstDay || value > lastDay) return null;
        const day = new Date((value - 25_569) * 86_400_000).toISOString().slice(0, 10);
        return remarkOn(model, cell, `${header} holds the number ${value}, perhaps a text that turned into the date ${day}. Set text format and type it again.`);
      },
    ),
};
