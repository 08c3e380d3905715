import { columnsOf, tableKeys } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";

export const missingKeyColumn: Rule = {
  name: "missing-key-column",
  family: "references",
  weight: "stop",
  meaning: "Every planning table has the columns without which its rows say nothing.",
  check: (model) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = model.table(key);
      if (table === null) return [];
      return columnsOf(key)
        .filter(([column, { required }]) => required === true && table.columns[column] === undefined)
        .map(([, { header }]) => ({
          sheet: table.sheet,
          row: table.headerRow,
          column: table.firstColumn,
          sentence: `Table ${table.name} has no column ${header}, so its rows cannot be told apart. Give that column the header ${header}.`,
        }));
    }),
};
