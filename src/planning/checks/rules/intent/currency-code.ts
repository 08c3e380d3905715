import { gather } from "../../../plan/model";
import { isCurrencyCode } from "../../../pricing";
import { cutSentence, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

const tables = ["quote", "prices"] as const;

export const currencyCode: Rule = {
  name: "currency-code",
  family: "intent",
  weight: "warn",
  meaning: "A currency is the three letters that ISO 4217 has for it: by them its decimals are known, and rows of one currency are added up.",
  check: (model) =>
    tables.flatMap((table) =>
      gather(model.rows(table), (row): Remark[] =>
        row.currency === "" || isCurrencyCode(row.currency.toUpperCase())
          ? []
          : [remarkAt(model, table, row, "currency", cutSentence(`Currency ${quote(row.currency)} is no code of three letters. Write one such as EUR or USD.`))],
      ),
    ),
};
