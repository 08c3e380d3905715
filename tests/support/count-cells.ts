import { rowsOfSteps } from "../../src/planning/commissioning/record";
import { readPlannedTab } from "../../src/planning/commissioning/tab";
import { pageScale, type SheetPlan } from "../../src/sheet";

/** What is to be typed into a tab: besides hold points, which stop the work whatever they cost, and serial numbers by bay, which are pasted as a list. */
export function countCells(tab: SheetPlan) {
  const { steps } = readPlannedTab(tab);
  const count = { typed: 0, atHoldPoints: 0, pasted: 0 };
  for (const { key, slot, kind, sign, holdPoint } of steps) {
    // Names and day of a grid stand once, in the row that signs for it.
    const cells = 1 + (slot !== null || sign === "none" ? 0 : sign === "two" ? 3 : 2);
    if (holdPoint) count.atHoldPoints += cells;
    else if (kind === "serial" && key.includes(".bay-")) count.pasted += cells;
    else count.typed += cells;
  }
  return { rows: rowsOfSteps(steps).length, ...count };
}

/** Finds the smallest size, in points, in which anything that people see is printed. */
export function smallestPoints({ rows, styles, columnWidths, hiddenColumns = [], print }: SheetPlan): number {
  const isSeen = (column: number): boolean => !hiddenColumns.includes(column);
  const used = new Set(rows.flatMap((row) => row.flatMap(({ value = null, formula, style }, column) => ((value === null && formula === undefined) || !isSeen(column) ? [] : [style]))));
  const sizes = [...used].map((style) => (style === undefined ? undefined : styles[style]?.fontSize) ?? 11);
  const scale = print?.fitToWidth === true ? pageScale(print.orientation, columnWidths.filter((_, column) => isSeen(column))) : (print?.scale ?? 100);
  return (Math.min(...sizes) * scale) / 100;
}
