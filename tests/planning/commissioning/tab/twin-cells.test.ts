import type { HeadlessWorkbook } from "../../../../src/headless/open-headless";
import { forgedCells } from "../../../../src/planning/commissioning/tab";
import { twinCells } from "../../../../src/planning/commissioning/tab/twin-cells";
import type { CellValue, SheetSnapshot } from "../../../../src/sheet";
import { fillAtRandom, openRandomTab, readRandomTab, recordCount } from "../../../support/random-records";

let workbook: HeadlessWorkbook;
beforeEach(async () => {
  workbook = await openRandomTab();
});
afterEach(() => {
  workbook.dispose();
});

describe("the formulas of a tab", () => {
  test.each([1, 2])("say what the twin says, over random records (seed %i)", async (seed) => {
    await fillAtRandom(workbook, seed);
    const { sheet, tab } = await readRandomTab(workbook);
    expect(forgedCells(sheet, tab).map(({ sentence }) => sentence)).toEqual([]);
    const said = twinCells(sheet, tab).filter(({ value }) => value !== "");
    expect(said.length).toBeGreaterThan(2 * recordCount);
    expect(new Set(tab.steps.map(({ result }) => result)).size).toBeGreaterThan(5);
  });
});

describe("a cell of ours that is forged", () => {
  test("is named, each in turn, where it holds no formula or shows something else; one that was not computed is none", async () => {
    await fillAtRandom(workbook, 3);
    const { sheet, tab } = await readRandomTab(workbook);
    const withCell = (row: number, column: number, value: CellValue, formula: string | null): SheetSnapshot => {
      const put = <Value>(lines: readonly (readonly Value[])[], one: Value): Value[][] =>
        lines.map((line, index) => (index === row ? line.map((there, place) => (place === column ? one : there)) : [...line]));
      return { ...sheet, values: put<CellValue>(sheet.values, value), formulas: put(sheet.formulas, formula) };
    };
    const cells = twinCells(sheet, tab);
    // Five a step of a list; in a grid one a step, and two a row.
    const slots = tab.steps.filter(({ slot }) => slot !== null).length;
    expect(cells.length).toBeGreaterThan(5 * (recordCount - slots) + slots);
    for (const { row, column, label: header, of, value } of cells) {
      const label = of === null ? header : `${header} of ${of}`;
      const named = (shown: CellValue, formula: string | null) => forgedCells(withCell(row, column, shown, formula), tab).map((one) => [one.row, one.column, one.sentence]);
      const again = "Build the tab again: the formula comes back.";
      expect(named(value, null)).toEqual([[row, column, `${label} holds no formula any more. ${again}`]]);
      expect(named("forged", "=A1")).toEqual([[row, column, expect.stringContaining(`${label} shows “forged” where `)]]);
      expect(named({ error: "#REF!" }, "=A1")).toHaveLength(1);
      expect([named(null, "=A1"), named("", "=A1")]).toEqual([[], []]);
    }
  });
});
