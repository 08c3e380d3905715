import { tableKeys, tables, type Table } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";

export const missingKeyColumn: Rule = {
  name: "missing-key-column",
  family: "references",
  weight: "stop",
  meaning: "Every planning table has the columns without which its rows say nothing.",
  check: (index) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = index.table(key);
      if (table === null) return [];
      return Object.entries((tables[key] as Table).columns)
        .filter(([column, { required }]) => required === true && table.columns[column] === undefined)
        .map(([, { header }]) => ({
          sheet: table.sheet,
          row: table.headerRow,
          column: table.firstColumn,
          sentence: `Table ${table.name} has no column ${header}, so its rows cannot be told apart. Give that column the header ${header}.`,
        }));
    }),
};
