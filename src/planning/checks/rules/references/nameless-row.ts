import { tableKeys, tables, type Table } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";
import { fieldOf } from "../../../plan/model";

export const namelessRow: Rule = {
  name: "nameless-row",
  family: "references",
  weight: "warn",
  meaning: "Every row that says something says what it is about.",
  check: (index) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = index.table(key);
      if (table === null) return [];
      const required = Object.entries((tables[key] as Table).columns).filter(([, column]) => column.required === true);
      const remarks: Remark[] = [];
      for (const row of index.rows(key)) {
        for (const [name, { header }] of required) {
          const column = table.columns[name];
          if (column === undefined || fieldOf(row, name) !== "") continue;
          remarks.push({ sheet: table.sheet, row: row.row, column, sentence: `${header} is blank in a row that holds something else. Write it, or empty the row.` });
        }
      }
      return remarks;
    }),
};
