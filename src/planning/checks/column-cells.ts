import type { CellValue } from "../../sheet";
import { tableKeys, tables, type Column, type Table, type TableKey } from "../plan/schema";
import type { Remark } from "./finding";
import type { PlanIndex } from "../plan/model";

/** One cell of a planning table as it stands on its sheet, before it was read. */
export interface ColumnCell {
  readonly key: TableKey;
  /** Key of the column in code. */
  readonly name: string;
  readonly header: string;
  readonly value: CellValue | undefined;
  readonly row: ReturnType<PlanIndex["rows"]>[number];
  /** Where a finding about the cell points to. */
  readonly place: Pick<Remark, "sheet" | "row" | "column">;
}

/** Remarks on the cells of every row in every column that `chosen` picks, table by table and column by column. */
export function remarkOnCells(
  index: PlanIndex,
  chosen: (column: Column, key: TableKey) => boolean,
  remark: (cell: ColumnCell) => Remark | null,
): Remark[] {
  return tableKeys.flatMap((key): Remark[] => {
    const table = index.table(key);
    if (table === null) return [];
    const values = index.sheet(table.sheet)?.values ?? [];
    return Object.entries((tables[key] as Table).columns).flatMap(([name, described]): Remark[] => {
      const column = table.columns[name];
      if (column === undefined || !chosen(described, key)) return [];
      const remarks: Remark[] = [];
      for (const row of index.rows(key)) {
        const place = { sheet: table.sheet, row: row.row, column };
        const found = remark({ key, name, header: described.header, value: values[row.row]?.[column], row, place });
        if (found !== null) remarks.push(found);
      }
      return remarks;
    });
  });
}
