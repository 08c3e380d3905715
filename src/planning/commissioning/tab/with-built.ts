import type { SheetPlan } from "../../../sheet";
import { cellToken, tokens } from "../seal";
import { readPlannedTab } from "./read-tab";
import { cellNumber } from "./sheet-columns";
import { at } from "./tab-columns";
import { hidden } from "./tab-cells";
import { codedColumns, rowCodes } from "./coded-columns";

/**
 * Writes into every row of a planned tab but that of the headers, under Built, what stands there, so that whatever differs later is known for typed.
 *
 * It travels with its row. Entries are read as from a filled tab and carried as records, so that they do not count; nor does what a formula says.
 */
export function withBuilt(plan: SheetPlan): SheetPlan {
  const { entries, headerRow } = readPlannedTab(plan);
  const rows = plan.rows.map((cells, row) => {
    const written = codedColumns.flatMap((key): [string, string][] => {
      const { value = null, formula } = cells[at[key]] ?? {};
      if (entries.has(cellNumber(row, at[key]))) return [[key, tokens.entry]];
      const token = formula === undefined ? cellToken(value, false) : tokens.formula;
      return token === "" ? [] : [[key, token]];
    });
    if (row === headerRow || written.every(([, token]) => token === tokens.entry)) return cells;
    return Object.assign([...cells], { [at.built]: hidden(`:${rowCodes.write(new Map(written))}`) });
  });
  return { ...plan, rows };
}
