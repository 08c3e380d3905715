import type { Changes } from "../plan/changes";
import type { Remark } from "./finding";

/** Gathers what the mends of findings write; where two would write the same cell the first, which weighs more, does. */
export function mendsOf(findings: readonly Remark[]): Changes {
  const cells = new Set<string>();
  const writes = findings
    .flatMap(({ mend }) => mend?.writes ?? [])
    .filter(({ sheet, row, column }) => {
      const cell = `${row} ${column} ${sheet}`;
      return cells.has(cell) ? false : cells.add(cell);
    });
  return { writes, growths: [] };
}
