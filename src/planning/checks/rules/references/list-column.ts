import { openColumns } from "../../../plan/lists";
import { gather } from "../../../plan/model";
import { tableKeys, tables } from "../../../plan/schema";
import { cutSentence, foldName, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const listColumn: Rule = {
  name: "list-column",
  family: "references",
  weight: "warn",
  meaning: "A row of Lists names a table of the plan, and a column of it into which a list may go: else the next list leaves that column out, and nobody is told.",
  check: (model) =>
    gather(model.rows("lists"), (row): Remark[] => {
      const key = tableKeys.find((one) => foldName(tables[one].name) === foldName(row.table));
      if (key === undefined) {
        const sentence = `Table ${quote(row.table)} of header ${quote(row.header)} is none of the plan, so nothing follows from this row. Mend it, or delete the row.`;
        return [remarkAt(model, "lists", row, "table", cutSentence(sentence))];
      }
      if (row.column === "" || openColumns(key).some(([, { header }]) => foldName(header) === foldName(row.column))) return [];
      const sentence = `No list goes into a column ${quote(row.column)} of ${tables[key].name}, so ${quote(row.header)} would be left out. Mend it, or delete the row.`;
      return [remarkAt(model, "lists", row, "column", cutSentence(sentence))];
    }),
};
