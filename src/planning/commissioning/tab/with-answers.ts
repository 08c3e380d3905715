import type { Cell, SheetPlan } from "../../../sheet";
import type { TabReading } from "./tab-reading";
import { twinCells } from "./twin-cells";

/** Puts beside every formula of a planned tab what it answers, as its twin says, so that nothing needs to compute the tab. */
export function withAnswers(plan: SheetPlan, tab: TabReading): SheetPlan {
  const rows: Cell[][] = plan.rows.map((cells) => [...cells]);
  const shown = { values: plan.rows.map((cells) => cells.map(({ value = null }) => value)) };
  for (const { row, column, value } of twinCells(shown, tab)) {
    const cell = rows[row]?.[column];
    if (cell?.formula !== undefined) rows[row]![column] = { ...cell, value };
  }
  return { ...plan, rows };
}
