import { cutSentence, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const priceTwice: Rule = {
  name: "price-twice",
  family: "intent",
  weight: "warn",
  meaning: "A part stands once in the price list: of two, the quote takes the first.",
  check: (model) =>
    [...model.groupBy("prices", "part").values()].flatMap(([first, ...others]): Remark[] =>
      others.map((row) => remarkAt(model, "prices", row, "part", cutSentence(`${quote(row.part)} stands in row ${first!.row + 1} of Price list already, and that is taken. Delete one of the two.`))),
    ),
};
