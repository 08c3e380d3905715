import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { expandJob } from "../../../../src/planning/commissioning/job";
import { openItems, outdatedItems, rowsOfSteps } from "../../../../src/planning/commissioning/record";
import { checkTabSeal, forgedCells, readTab, sealBlocks } from "../../../../src/planning/commissioning/tab";
import { slotColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import { Problem } from "../../../../src/planning/text";
import { showCell, type CellValue, type SheetSnapshot } from "../../../../src/sheet";
import { gridPlan, moment, planWorkbook } from "../../../support/commissioning-plan";
import { builtTab, columnsOf, computed, withBlocks, withCells, type Written } from "../../../support/filled-tab";

const rows = gridPlan();
const planSheets = planWorkbook(rows).sheets;
const empty = builtTab(rows);
const tab = readTab(empty)!;
const columns = columnsOf(tab);
const at = (key: string): number => columns[key]!;
const foundColumns = slotColumns.map(({ found }) => at(found));
/** Rows of the grid of ports. */
const grid = rowsOfSteps(tab.steps).filter(({ records }) => records.length > 1).map(({ row }) => row);
const [first, second, third] = grid as [number, number, number];
/** The row that says what the steps of the grid are; below it stand the names of its columns. */
const head = first - 2;

/** A text of its own in every cell in which somebody may type, so that it is found wherever it stands. */
const marks: string[] = [];
function mark(): string {
  marks.push(`x${1000 + marks.length}`);
  return marks.at(-1)!;
}
const filled = computed(withCells(
  empty,
  ...tab.steps.flatMap(({ row, slot }): Written[] =>
    (slot === null ? ["found", "by", "note"].map(at) : [foundColumns[slot.place]!, ...(slot.place === 0 ? [at("note")] : [])]).map((column): Written => [row, column, mark()])),
  [tab.places.snagsRow + 2, at("stepId"), 9],
  [tab.places.snagsRow + 2, at("step"), mark()],
));
const sealed = computed(withBlocks(filled, sealBlocks(filled, readTab(filled)!, { by: "AB", date: "2026-03-09 14:20" })));

type Attack = (sheet: SheetSnapshot) => SheetSnapshot;

/** Changes values and formulas alike, as rows and cells that move on a sheet do. */
function moving(change: (cells: CellValue[][]) => void): Attack {
  return (sheet) => {
    const values = sheet.values.map((line) => [...line]);
    const formulas = sheet.formulas.map((line): (string | null)[] => [...line]);
    change(values);
    change(formulas);
    return { ...sheet, values, formulas };
  };
}

const emptied = (row: number, keys: readonly number[]): Attack => (sheet) => withCells(sheet, ...keys.map((column): Written => [row, column, null]));
const allOf = (sheet: SheetSnapshot, row: number): number[] => sheet.values[row]!.map((_, column) => column);
const copied = (from: number, to: number, isCopied: (column: number) => boolean): Attack => (sheet) =>
  withCells(sheet, ...allOf(sheet, from).filter(isCopied).map((column): Written => [to, column, sheet.values[from]![column] ?? null, sheet.formulas[from]?.[column] ?? undefined]));
const moved = (from: number, to: number): Attack => moving((cells) => {
  const [line] = cells.splice(from, 1);
  cells.splice(to, 0, line!);
});
const withoutColumn = (key: string): Attack => (sheet) => withCells(sheet, ...sheet.values.flatMap((_, row): Written[] => (row > tab.headerRow ? [[row, at(key), null]] : [])));
const isEntry = (column: number): boolean => foundColumns.includes(column) || column === at("note");

/** What is shown of one row with what is hidden of another. */
function shownOf(cells: readonly CellValue[][], shown: number, hidden: number): CellValue[] {
  return [...cells[shown]!.slice(0, at("key")), ...cells[hidden]!.slice(at("key"))];
}

/** Takes the last slot out of the key of a row. */
function withoutLast(key: CellValue | undefined): string {
  return showCell(key).replace(/,"[^"]*"\]$/, "]");
}

/** What people do to grids. Of each: does a close-out see it, does a seal that was set before. */
const attacks: Readonly<Record<string, readonly [attack: Attack, closing: "seen" | "unseen", seal: "seen" | "unseen"]>> = {
  "cells are cleared in the middle of a row": [emptied(second, ["expected", "found", "unit", "expectedBefore"].map(at)), "seen", "seen"],
  "a record is cut and pasted into the row below": [(sheet) => withCells(sheet, [first, at("found"), null], [second, at("found"), sheet.values[first]![at("found")]!]), "seen", "seen"],
  "Found is deleted in one row and what is below it moves up": [moving((cells) => {
    for (let row = second; row < cells.length - 1; row += 1) cells[row]![at("found")] = cells[row + 1]?.[at("found")] ?? null;
  }), "seen", "seen"],
  "two rows change places": [moving((cells) => { [cells[first], cells[third]] = [cells[third]!, cells[first]!]; }), "unseen", "unseen"],
  "a row is sorted above the names of its columns": [moved(first, head), "unseen", "unseen"],
  "a row is sorted into another section": [moved(third, tab.steps[0]!.row), "unseen", "unseen"],
  "a row is moved below everything": [moved(third, filled.values.length - 1), "unseen", "unseen"],
  "a row is copied above the headers": [moving((cells) => { cells.splice(tab.headerRow, 0, [...cells[second]!]); }), "unseen", "seen"],
  "a row is moved above the headers": [moved(second, tab.headerRow), "seen", "seen"],
  "all rows are deleted": [moving((cells) => { cells.splice(first, grid.length); }), "seen", "seen"],
  "the row that says what the steps are is deleted": [moving((cells) => { cells.splice(head, 1); }), "seen", "seen"],
  "the row that says what the steps are is emptied": [(sheet) => emptied(head, allOf(sheet, head))(sheet), "seen", "seen"],
  "the steps and a column are named otherwise": [(sheet) => withCells(sheet, [head, at("found"), "Seen address"], [head, at("step"), "What"]), "seen", "seen"],
  "the row that says what the steps are is moved behind the seals": [moved(head, filled.values.length - 1), "seen", "unseen"],
  "two slots are merged into one cell": [emptied(second, ["unit", "expectedBefore"].map(at)), "seen", "seen"],
  "every formula is pasted over by its value": [(sheet) => ({ ...sheet, formulas: sheet.formulas.map((line) => line.map(() => null)) }), "seen", "seen"],
  ...Object.fromEntries(["rule", "low", "high", "plannedUnit", "compares", "settled", "low2", "compares2"].flatMap((key) => [
    [`the hidden cell ${key} of a row is emptied`, [emptied(second, [at(key)]), "seen", "seen"] as const],
    [`the hidden cell ${key} of a row is edited`, [(sheet: SheetSnapshot) => withCells(sheet, [second, at(key), "edited"]), "seen", "seen"] as const],
    [`the hidden column ${key} is emptied`, [withoutColumn(key), "seen", "seen"] as const],
  ])),
};

/** What stands on a tab that a plan in memory builds again over this sheet; throws what refuses it. */
function builtAgain(sheet: SheetSnapshot): string {
  const source = readCommissioningPlan({ sheets: [...planSheets, sheet] });
  return buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab.rows.flat().map(({ value = null }) => showCell(value)).join("\n");
}

function itemsIn(sheet: SheetSnapshot): string[] {
  const read = readTab(sheet)!;
  const { model } = readCommissioningPlan({ sheets: planSheets });
  return [...openItems(read), ...outdatedItems(read, expandJob(model, model.rows("jobs")[0]!)), ...forgedCells(sheet, read)].map(({ sentence }) => sentence);
}

describe.each(Object.entries(attacks))("when %s", (_, [attack, closing, seal]) => {
  const sheet = computed(attack(filled));

  test("every text on the sheet stands in the tab that is built next", () => {
    const there = sheet.values.flat().map(showCell).join("\n");
    const left = marks.filter((one) => there.includes(one));
    const again = builtAgain(sheet);
    expect(left.filter((one) => !again.includes(one))).toEqual([]);
  });

  test("closing names what it has to", () => {
    const before = new Set(itemsIn(filled));
    expect(itemsIn(sheet).some((sentence) => !before.has(sentence)) ? "seen" : "unseen").toBe(closing);
  });

  test("a seal shows what is not the order of rows", () => {
    const now = computed(attack(sealed));
    expect(checkTabSeal(now, readTab(now)!)!.holds ? "unseen" : "seen").toBe(seal);
  });
});

describe("a tab is refused by name, and nothing is built over it, when", () => {
  const foreign = /^Row \d+ of "North hall" has (a hidden key that is not that of its step|lost its hidden key)\. Undo that, or move what was typed to another row and delete this one\.$/;
  test.each([
    ["cells of a grid are deleted and those to the right move in", moving((cells) => { cells[second]!.splice(at("expected"), 2); })],
    ["what is shown is deleted in one row and moves up", moving((cells) => { for (let row = second; row < cells.length - 1; row += 1) cells[row] = shownOf(cells, row + 1, row); })],
    ["cells are put in where a row is shown and push the rest down", moving((cells) => { for (let row = cells.length - 1; row > second; row -= 1) cells[row] = shownOf(cells, row - 1, row); })],
    ["the key of a row is emptied", emptied(second, [at("key")])],
    ["the key of a row is edited", (sheet: SheetSnapshot) => withCells(sheet, [second, at("key"), "edited"])],
    ["the key of a row names one slot less", (sheet: SheetSnapshot) => withCells(sheet, [second, at("key"), withoutLast(sheet.values[second]![at("key")])])],
    ["the key of a row is that of another one", copied(third, second, (column) => column === at("key"))],
    ["all that is hidden of a row is that of another one", copied(third, second, (column) => column >= at("key"))],
    ["all that is shown of a row but its records is that of another one", copied(third, second, (column) => column < at("key") && !isEntry(column))],
  ] satisfies [string, Attack][])("%s", (_, attack) => {
    const sheet = computed(attack(filled));
    expect(readTab(sheet)!.faults.some((fault) => foreign.test(fault))).toBe(true);
    expect(() => builtAgain(sheet)).toThrow(Problem);
  });

  test.each(["rule", "low", "high", "plannedUnit", "compares", "retest", "settled", "minutes", "carried", "built", "digest", "low2", "compares4"])("the hidden column %s is deleted", (key) => {
    const sheet = computed(moving((cells) => { for (const line of cells) line.splice(at(key), 1); })(filled));
    expect(readTab(sheet)!.faults[0]).toMatch(/^The header "[A-Z][a-z0-9 ]+" of "North hall" is gone\./);
    expect(() => builtAgain(sheet)).toThrow(Problem);
  });
});
