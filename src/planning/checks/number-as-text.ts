import { quote } from "../problem";
import { tableKeys, tables, type ColumnKind, type Table } from "../workbook-model";
import { mendAt, type Remark, type Rule } from "./finding";
import { fieldOf } from "./plan-index";

const numeric: readonly ColumnKind[] = ["count", "number"];

export const numberAsText: Rule = {
  name: "number-as-text",
  family: "references",
  weight: "warn",
  meaning: "Numbers stand as numbers: the sheet's own formulas refuse, or pass over, digits that are text.",
  mends: "Writes the number.",
  check: (index) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = index.table(key);
      if (table === null) return [];
      const values = index.sheet(table.sheet)?.values ?? [];
      return Object.entries((tables[key] as Table).columns).flatMap(([name, { kind, header }]): Remark[] => {
        const column = table.columns[name];
        if (column === undefined || !numeric.includes(kind)) return [];
        const remarks: Remark[] = [];
        for (const row of index.rows(key)) {
          const value = values[row.row]?.[column];
          const read = typeof value === "string" ? fieldOf(row, name) : null;
          if (typeof value !== "string" || typeof read !== "number") continue;
          const place = { sheet: table.sheet, row: row.row, column, sentence: `${header} ${quote(value)} is text, which formulas do not count. Write it as a number.` };
          const mend = mendAt(index, key, row, name as never, read);
          remarks.push(mend === null ? place : { ...place, mend });
        }
        return remarks;
      });
    }),
};
