import { cellOf } from "../../../plan/read";
import { columnsOf, tableKeys } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";

export const namelessRow: Rule = {
  name: "nameless-row",
  family: "references",
  weight: "warn",
  meaning: "Every row that says something says what it is about.",
  check: (model) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = model.table(key);
      if (table === null) return [];
      const required = columnsOf(key).filter(([, column]) => column.required === true);
      const remarks: Remark[] = [];
      for (const row of model.rows(key)) {
        for (const [name, { header }] of required) {
          const column = table.columns[name];
          if (column === undefined || cellOf(row, name) !== "") continue;
          remarks.push({ sheet: table.sheet, row: row.row, column, sentence: `${header} is blank in a row that holds something else. Write it, or empty the row.` });
        }
      }
      return remarks;
    }),
};
