import { checkTabSeal, readTab, sealBlocks } from "../../src/planning/commissioning/tab";
import { twinCells } from "../../src/planning/commissioning/tab/twin-cells";
import { columnLetters, isBlank, type CellValue, type SheetSnapshot } from "../../src/sheet";
import { slotColumns } from "../../src/planning/commissioning/tab/tab-columns";
import { gridPlan } from "./commissioning-plan";
import { builtTab, columnsOf, computed, withBlocks, withCells, type Written } from "./filled-tab";

/** A tab with records in lists and grids, a snag, a column and a row of people's own and a text beside the summary. */
export function filledTab(): SheetSnapshot {
  const empty = builtTab(gridPlan());
  const tab = readTab(empty)!;
  const { found, by, done, note, step, no, result } = columnsOf(tab);
  const width = empty.values[1]!.length;
  const records = tab.steps.flatMap(({ row, slot }, index): Written[] => {
    const value = index % 3 === 0 ? 8 : "N-0001";
    if (slot !== null) return [[row, tab.places.columns[slotColumns[slot.place]!.found]!, value]];
    return [[row, found!, value], [row, by!, "AB"], [row, done!, 46_083 + index / 1440], [row, note!, `n${index}`]];
  });
  const snag = tab.places.snagsRow + 2;
  return computed(withCells(
    empty, ...records, [snag, no!, 3], [snag, step!, "Dent"], [snag, result!, "Closed"], [snag, by!, "EF"],
    [tab.headerRow, width, "Mine"], [tab.steps[0]!.row, width, "own"], [4, width + 1, 12.5], [4, width + 2, "6", '=2&"4"'],
  ));
}

/** Who seals, and when. */
export const act = { by: "AB", date: "2026-03-09 14:20" };
/** Seals a tab as it stands. */
export function sealed(sheet: SheetSnapshot): SheetSnapshot {
  return computed(withBlocks(sheet, sealBlocks(sheet, readTab(sheet)!, act)));
}

/** Tells whether an edit is noticed: the seal names a cell in that place or its row, or the tab is refused by name. */
function isNoticed(sheet: SheetSnapshot, row: number, column: number): boolean {
  const now = readTab(sheet);
  if (now === null || now.faults.length > 0) return true;
  const found = checkTabSeal(sheet, now);
  return found !== null && !found.holds && found.changed.some((cell) =>
    (cell.row === row && (cell.column === column || cell.column === 0)) || /^Day, name or code|^Hidden cells of the seal/.test(cell.label));
}

/**
 * Edits cells of a sealed tab, each in turn: other text or number, nothing, digits as text, a formula in place of a value and a value in place of
 * a formula that show the same, another time of day. Answers with how many edits were tried, and those that no check has named.
 *
 * `every` takes one cell of so many.
 */
export function editSealedTab(every: number): { readonly tried: number; readonly missed: readonly string[] } {
  const tab = sealed(filledTab());
  const reading = readTab(tab)!;
  const columns = columnsOf(reading);
  const twin = new Set(twinCells(tab, reading).map(({ row, column }) => `${row}:${column}`));
  const missed: string[] = [];
  let [tried, cell] = [0, 0];
  for (const [row, line] of tab.values.entries()) {
    for (let column = 0; column < line.length + 1; column += 1) {
      cell += 1;
      const value: CellValue = line[column] ?? null;
      const formula = tab.formulas[row]?.[column] ?? null;
      // A digest beside a row that has none, and the header of the digests as a formula, are no cells of the tab.
      if (cell % every !== 0 || (column === columns.digest && (isBlank(value) || row === reading.headerRow))) continue;
      const isOurs = twin.has(`${row}:${column}`) || (formula !== null && column < columns.digest!);
      const edits: Written[] = [[row, column, isOurs || typeof value !== "number" ? "edited" : value + 1]];
      if (!isBlank(value)) edits.push([row, column, null], formula === null ? [row, column, value, "=A1"] : [row, column, value]);
      if (typeof value === "number") edits.push([row, column, String(value)]);
      if (typeof value === "number" && column === columns.done) edits.push([row, column, value + 1 / 1440]);
      for (const edit of edits) {
        tried += 1;
        if (!isNoticed(computed(withCells(tab, edit)), row, column)) missed.push(`${columnLetters(column)}${row + 1} ${JSON.stringify(edit)}`);
      }
    }
  }
  return { tried, missed };
}
