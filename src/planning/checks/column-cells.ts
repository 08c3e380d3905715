import type { CellValue } from "../../sheet";
import type { PlanCell, PlanModel } from "../plan/model";
import { cellOf } from "../plan/read";
import { type Column, columnsOf, type TableKey, tableKeys } from "../plan/schema";
import type { Remark } from "./finding";

/** One cell of a planning table as it stands on its sheet, and what was read of it. */
export interface ColumnCell<Value extends CellValue> extends PlanCell {
  readonly header: string;
  readonly value: Value;
  readonly read: unknown;
}

/** Remarks on the cells of every row in every column that `chosen` picks, where `isSuspect` says so of what stands there, table by table and column by column. */
export function remarkOnCells<Value extends CellValue>(
  model: PlanModel,
  chosen: (column: Column, key: TableKey) => boolean,
  isSuspect: (value: CellValue | undefined) => value is Value,
  remark: (cell: ColumnCell<Value>) => Remark | null,
): Remark[] {
  return tableKeys.flatMap((key): Remark[] => {
    const table = model.table(key);
    if (table === null) return [];
    const values = model.sheet(table.sheet)?.values ?? [];
    return columnsOf(key).flatMap(([name, described]): Remark[] => {
      const column = table.columns[name];
      if (column === undefined || !chosen(described, key)) return [];
      const remarks: Remark[] = [];
      for (const row of model.rows(key)) {
        const value = values[row.row]?.[column];
        if (!isSuspect(value)) continue;
        const found = remark({ table: key, row: row.row, column: name, header: described.header, value, read: cellOf(row, name) });
        if (found !== null) remarks.push(found);
      }
      return remarks;
    });
  });
}
