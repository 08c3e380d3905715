import { textOf } from "../../../plan/read";
import { nameColumn, tables } from "../../../plan/schema";
import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

const sited = ["racks", "feeds", "switches", "hosts", "arrays", "jobs"] as const;

export const rowWithoutSite: Rule = {
  name: "row-without-site",
  family: "references",
  weight: "warn",
  meaning: "Every rack, feed, switch, host, array and job says at which site it is: what is at none is held against nothing there, its paths included.",
  check: (model) =>
    sited.flatMap((key): Remark[] => {
      const table = model.table(key);
      // A column that is not there is told by a rule of its own.
      if (table?.columns.site === undefined) return [];
      const [first, ...others] = model.rows(key).filter((row) => row.site === "" && textOf(row, nameColumn(key)) !== "");
      if (first === undefined) return [];
      const who = `${andMore(textOf(first, nameColumn(key)), others.length)} of ${tables[key].name}`;
      const said = others.length === 0 ? "says no site, so checks of a site pass over it" : "say no site, so checks of a site pass over them";
      return [remarkAt(model, key, first, "site", cutSentence(`${who} ${said}. Write it.`))];
    }),
};
