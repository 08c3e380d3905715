import { columnsOf, tableKeys } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";

export const missingColumn: Rule = {
  name: "missing-column",
  family: "references",
  weight: "note",
  meaning: "A column that is missing, or has another header, is not checked.",
  check: (model) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = model.table(key);
      if (table === null) return [];
      return columnsOf(key)
        .filter(([column, { required, kind }]) => required !== true && kind !== "formula" && table.columns[column] === undefined)
        .map(([, { header }]) => ({
          sheet: table.sheet,
          row: table.headerRow,
          column: table.firstColumn,
          sentence: `Table ${table.name} has no column ${header}, so nothing about it is checked. If it was renamed, give it the header ${header}.`,
        }));
    }),
};
