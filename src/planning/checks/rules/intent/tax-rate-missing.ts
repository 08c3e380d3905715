import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const taxRateMissing: Rule = {
  name: "tax-rate-missing",
  family: "intent",
  weight: "warn",
  meaning: "Where a row of an offer has a tax rate all of its rows have one, 0% where there is no tax: a blank one adds none.",
  check: (model) =>
    model.quote.offers().flatMap(({ name, untaxed }) =>
      untaxed.map((row): Remark =>
        remarkAt(model, "quote", row, "taxRate", cutSentence(`${row.item} has no tax rate, others of offer ${name} have one. Write it, or 0% where there is none.`)),
      ),
    ),
};
