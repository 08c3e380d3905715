import type { SheetPlan } from "../../../sheet";
import { cellToken, tokens } from "../seal";
import { cellNumber } from "./sheet-columns";
import { at } from "./tab-columns";
import type { TabReading } from "./tab-reading";
import { hidden } from "./tab-cells";
import { codedColumns, rowCodes } from "./coded-columns";

/**
 * Writes into every row of a planned tab but that of the headers, under Built, what stands there, so that whatever differs later is known for typed.
 *
 * It travels with its row. Entries are read as from a filled tab and carried as records, so that they do not count; nor does what a formula says.
 */
export function withBuilt(plan: SheetPlan, { entries, headerRow }: TabReading): SheetPlan {
  const rows = plan.rows.map((cells, row) => {
    if (row === headerRow) return cells;
    const written = new Map<string, string>();
    let isBlank = true;
    for (const key of codedColumns) {
      const { value = null, formula } = cells[at[key]] ?? {};
      const isEntry = entries.has(cellNumber(row, at[key]));
      const token = isEntry ? tokens.entry : formula === undefined ? cellToken(value, false) : tokens.formula;
      if (token !== "") written.set(key, token);
      isBlank &&= isEntry || token === "";
    }
    if (isBlank) return cells;
    const built = [...cells];
    built[at.built] = hidden(`:${rowCodes.write(written)}`);
    return built;
  });
  return { ...plan, rows };
}
