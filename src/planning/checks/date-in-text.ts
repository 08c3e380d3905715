import { tableKeys, tables, type Table } from "../workbook-model";
import type { Remark, Rule } from "./finding";

/** Days of the sheet's calendar from 2000-01-01 to 2099-12-31. */
const firstDay = 36_526;
const lastDay = 73_050;

export const dateInText: Rule = {
  name: "date-in-text",
  family: "references",
  weight: "warn",
  meaning: "A text column holds no date number, which is what a sheet makes of a text such as 1-2 in a cell that is not text.",
  check: (index) =>
    tableKeys.flatMap((key): Remark[] => {
      const table = index.table(key);
      if (table === null) return [];
      const values = index.sheet(table.sheet)?.values ?? [];
      return Object.entries((tables[key] as Table).columns).flatMap(([name, { kind, header }]): Remark[] => {
        const column = table.columns[name];
        if (column === undefined || kind !== "text" || key === "settings") return [];
        const remarks: Remark[] = [];
        for (const { row } of index.rows(key)) {
          const value = values[row]?.[column];
          if (typeof value !== "number" || !Number.isInteger(value) || value < firstDay || value > lastDay) continue;
          const day = new Date((value - 25_569) * 86_400_000).toISOString().slice(0, 10);
          remarks.push({ sheet: table.sheet, row, column, sentence: `${header} holds the number ${value}, perhaps a text that turned into the date ${day}. Set text format and type it again.` });
        }
        return remarks;
      });
    }),
};
