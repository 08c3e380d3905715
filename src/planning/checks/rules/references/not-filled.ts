import { missingValues, type MissingColumn } from "../../../plan/guided";
import { groupBy } from "../../../plan/model";
import { andMore, cutSentence } from "../../../text";
import { remarkOn, type Rule } from "../../finding";

export const notFilled: Rule = {
  name: "not-filled",
  family: "references",
  weight: "note",
  meaning: "What checks, installation and price need is filled: what needs a blank cell is not checked, or a usual value is taken for it. It is told once a table.",
  check: (model) => {
    // A row at no site is told by a rule of its own.
    const missing = missingValues(model).filter(({ first }) => first.column !== "site");
    return [...groupBy(missing, ({ table }) => table)].map(([table, columns]) => remarkOn(model, columns[0]!.first, sentenceOf(table, columns)));
  },
};

/** Most characters for what is not filled: what is said of it fits behind. */
const room = 90;

function sentenceOf(table: string, columns: readonly MissingColumn[]): string {
  const [first, ...others] = columns.map(({ header, rows }) => (rows.length === 1 && rows[0] !== "" ? `${header} of ${rows[0]}` : header));
  let said = first ?? "";
  let at = 0;
  for (; at < others.length && `${said}, ${others[at]}`.length <= room; at += 1) said += `, ${others[at]}`;
  return cutSentence(`Blank in ${table}: ${andMore(said, others.length - at)}. What needs it is not checked.`);
}
