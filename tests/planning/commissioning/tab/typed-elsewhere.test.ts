import { readTab } from "../../../../src/planning/commissioning/tab";
import { at } from "../../../../src/planning/commissioning/tab/tab-columns";
import { stateCell, tabStates } from "../../../../src/planning/commissioning/tab/tab-mark";
import { columnLetters, type SheetSnapshot } from "../../../../src/sheet";
import { builtTab, computed, withCells, type Written } from "../../../support/filled-tab";

const sheet = builtTab();
const tab = readTab(sheet)!;
const [first, second] = [tab.steps[0]!.row, tab.steps[1]!.row];
const { snagsRow, orphansRow, sealsRow } = tab.places;
const width = sheet.values[tab.headerRow]!.length;

/** What is found on a sheet, as text and place. */
const found = (on: SheetSnapshot): unknown[] => readTab(on)!.elsewhere.map(({ typed }) => [typed.text, typed.place]);
const foundIn = (...cells: readonly Written[]): unknown[] => found(withCells(sheet, ...cells));

describe("what people typed where no build looks for it", () => {
  test("is nothing on a tab as it was built, computed, not computed or filled", () => {
    expect(found(sheet)).toEqual([]);
    expect(found({ ...sheet, values: sheet.values.map((line, row) => line.map((value, column) => (sheet.formulas[row]?.[column] === null ? value : null))) })).toEqual([]);
    const snag = snagsRow + 2;
    const records: Written[] = [
      [first, at.found, "Yes"], [first, at.unit, "TiB"], [first, at.by, "AB"], [first, at.witness, "x"], [first, at.recheckedBy, "x"], [first, at.done, 46_083.5], [first, at.note, "n"],
    ];
    expect(found(computed(withCells(sheet, ...records, [snag, at.stepId, 1], [snag, at.step, "Dent"], [snag, at.expectedBefore, "Closed"], [snag, at.found, "AB"])))).toEqual([]);
  });

  test.each<[string, number, number, string]>([
    ["beside the title", 0, width + 1, `Column ${columnLetters(width + 1)} of row 1`],
    ["beside the summary", 4, width, `Column ${columnLetters(width)} of row 5`],
    ["over a caution or fact", 2, at.no, "No. of row 3"],
    ["over a figure", 5, at.step, "Step of row 6"],
    ["over Result", first, at.result, "Result of No. 1 T-01 North hall"],
    ["over Expected", first, at.expected, "Expected of No. 1 T-01 North hall"],
    ["over Before", first, at.expectedBefore, "Before of No. 1 T-01 North hall"],
    ["over a step id", second, at.stepId, "Step id of No. 2 x n-1"],
    ["over a hidden cell", second, at.low, "Low of No. 2 T-10 n-1"],
    ["in a section row", first - 1, at.found, `Found of row ${first}`],
    ["under Witness of a snag", snagsRow + 3, at.witness, `Witness of row ${snagsRow + 4}`],
    ["under Done of a snag", snagsRow + 3, at.done, `Done of row ${snagsRow + 4}`],
    ["in the kept block", orphansRow + 1, at.step, `Step of row ${orphansRow + 2}`],
    ["in the block of what was found", orphansRow + 4, at.step, `Step of row ${orphansRow + 5}`],
    ["under the labels of the seals", sealsRow + 2, at.step, `Step of row ${sealsRow + 3}`],
    ["far below and to the right", sheet.values.length + 9, width + 5, `Column ${columnLetters(width + 5)} of row ${sheet.values.length + 10}`],
    ["in a column of people's own", second, width, `Column ${columnLetters(width)} of No. 2 T-10 n-1`],
    ["under Built of a blank row", orphansRow - 1, at.built, `Built of row ${orphansRow}`],
    ["under Digest", second, at.digest, "Digest of No. 2 T-10 n-1"],
  ])("is found %s", (_, row, column, place) => {
    expect(foundIn([row, column, "x"])).toEqual([["x", `${place} (${columnLetters(column)}${row + 1})`]]);
  });

  test("tells numbers, ticks and errors by what they show, and a formula by what it shows and says", () => {
    const at = width;
    const typed: Written[] = [[2, at, 12.5], [3, at, true], [4, at, { error: "#REF!" }], [5, at, 14, "=2*7"], [6, at, null, "=X1"], [7, at, "=1+1"]];
    expect(foundIn(...typed).map((one) => (one as string[])[0])).toEqual([
      "12.5", "TRUE", "#REF!", "14 (formula 2*7)", "(formula X1)", "=1+1",
    ]);
    expect(foundIn([2, at, "  "], [3, at, "\u00a0"], [4, at, ""])).toEqual([]);
    const long = "x".repeat(32_767);
    expect(foundIn([2, at, long, "=A1"]).map((one) => (one as string[])[0])).toEqual([long]);
  });

  test("is no formula of ours: not while it is one, nor a value in its place that shows what it must", () => {
    expect(foundIn([first, at.result, "", "=other"], [first, at.result, "", "=other"])).toEqual([]);
    expect(foundIn([first, at.result, { error: "#NAME?" }, "=ours"], [first, at.settled, 0])).toEqual([]);
    // Computed before something was typed, and written by another program in its own way.
    const [result, done] = [sheet.formulas[first]![at.result]!, sheet.formulas[5]![at.subject]!];
    expect(foundIn([first, at.result, "Differs", result.replaceAll("$", "").replaceAll(",", ", ").toLowerCase()], [5, at.subject, "7 of 18", done])).toEqual([]);
    expect(foundIn([first, at.settled, 7, "=3+4"])).toHaveLength(1);
    expect(foundIn([first, at.result, "As expected", '="As expected"'])).toEqual([
      ['As expected (formula "As expected")', `Result of No. 1 T-01 North hall (${columnLetters(at.result)}${first + 1})`],
    ]);
  });

  test("names a column of people's own by its header, which counts as well, and cuts a long one", () => {
    const header = "h".repeat(100);
    expect(foundIn([tab.headerRow, width, "Mine"], [first, width, "x"], [first, width + 1, "y"], [tab.headerRow, width + 1, header])).toEqual([
      ["Mine", `Mine of row 2 (${columnLetters(width)}2)`], [header, `${"h".repeat(79)}… of row 2 (${columnLetters(width + 1)}2)`],
      ["x", `Mine of No. 1 T-01 North hall (${columnLetters(width)}${first + 1})`], ["y", `${"h".repeat(79)}… of No. 1 T-01 North hall (${columnLetters(width + 1)}${first + 1})`],
    ]);
  });

  // ISO/IEC 29500-1 section 18.17.4.1: day 45292 is 2024-01-01, 36526 is 2000-01-01 and 73050 is 2099-12-31.
  test.each<[number, string]>([
    [45_292, "45292, as a day 2024-01-01"], [45_292.25, "45292.25, as a day 2024-01-01"], [36_526, "36526, as a day 2000-01-01"], [73_050.5, "73050.5, as a day 2099-12-31"],
    [36_525, "36525"], [73_051, "73051"], [-45_292, "-45292"], [12.5, "12.5"],
  ])("tells %d, which its cell may show as a day, as %j", (value, text) => {
    expect(foundIn([first, width, value])).toEqual([[text, expect.any(String)]]);
  });

  test("goes with its row: nothing is found on a sheet whose rows were sorted, copied or moved, or whose columns were", () => {
    const rows = tab.steps.map(({ row }) => row);
    const turned = (grid: readonly (readonly unknown[])[]) => grid.map((line, row) => grid[rows.includes(row) ? rows[rows.length - 1 - rows.indexOf(row)]! : row] ?? line);
    const copied = (grid: readonly (readonly unknown[])[]) => [...grid.slice(0, first), grid[first]!, ...grid.slice(first)];
    const wider = (grid: readonly (readonly unknown[])[]) => grid.map((line) => [...line.slice(0, 4), null, ...line.slice(4)]);
    for (const change of [turned, copied, wider]) {
      expect(found(computed({ ...sheet, values: change(sheet.values) as SheetSnapshot["values"], formulas: change(sheet.formulas) as SheetSnapshot["formulas"] }))).toEqual([]);
    }
  });

  test("is told where a text stands over the count of the seals, or over the state, which then says that no build came to its end", () => {
    const { column } = stateCell;
    expect(foundIn([0, column + 2, "moved to Tuesday"])).toEqual([["moved to Tuesday", expect.stringContaining("of row 1")]]);
    expect(foundIn([0, column, "moved to Tuesday"])).toEqual([["moved to Tuesday", expect.stringContaining("of row 1")]]);
    expect(foundIn([0, column, tabStates.unfinished])).toEqual([]);
  });

  test("is not told of a tab that cannot be read as it was built", () => {
    expect(foundIn([tab.headerRow, at.found, null], [first, at.result, "x"])).toEqual([]);
  });
});
