import { readTab, snagBlocks, stepBlocks, type TabReading } from "../../../../src/planning/commissioning/tab";
import { gridPlan } from "../../../support/commissioning-plan";
import { builtTab, withBlocks, withCells } from "../../../support/filled-tab";
import { problemOf } from "../../../support/sentence";

const sheet = builtTab(gridPlan());
const tab = readTab(sheet)!;
const step = (of: TabReading, key: string) => of.steps.find((one) => one.key.endsWith(`/${key}`))!;

describe("what somebody types about a step", () => {
  test("is read back from its row, field by field, and nothing else is", () => {
    const typed = { found: "N-0001", by: "AB", witness: "CD", done: 46_083, note: "Label is torn" };
    const after = readTab(withBlocks(sheet, stepBlocks(tab, step(tab, "T-10/A0001"), typed)))!;
    expect(step(after, "T-10/A0001").typed).toEqual({ ...typed, unit: null, recheckedBy: null });
    expect(after.steps.filter(({ typed: { found } }) => found !== null)).toHaveLength(1);
    expect(after.elsewhere).toEqual([]);
  });

  test("goes into the pair of cells of its own where steps stand side by side", () => {
    const found = { "T-20": "192.0.2.1", "T-21": 8972, "T-22": "none", "T-23": "Yes" };
    const blocks = Object.entries(found).flatMap(([stepId, value]) => stepBlocks(tab, step(tab, `${stepId}/A0001.A.0`), { found: value }));
    const after = readTab(withBlocks(sheet, blocks))!;
    for (const [stepId, value] of Object.entries(found)) expect(step(after, `${stepId}/A0001.A.0`)).toMatchObject({ typed: { found: value }, result: "As expected" });
  });

  test("is never a name in the row of a grid, whose cells are another step's there", () => {
    expect(() => stepBlocks(tab, step(tab, "T-20/A0001.A.0"), { by: "AB" })).toThrow("Nothing is typed under by");
  });

  test("follows a column that people have moved, and empties a cell with null", () => {
    const filled = withBlocks(sheet, stepBlocks(tab, step(tab, "T-10/A0001"), { found: "N-0001" }));
    const after = readTab(withBlocks(filled, stepBlocks(tab, step(tab, "T-10/A0001"), { found: null })))!;
    expect(step(after, "T-10/A0001").typed.found).toBeNull();
    const wider = { ...sheet, values: sheet.values.map((line) => [null, ...line]), formulas: sheet.formulas.map((line) => [null, ...line]) };
    const moved = readTab(wider)!;
    expect(step(readTab(withBlocks(wider, stepBlocks(moved, step(moved, "T-10/A0001"), { found: "N-0001" })))!, "T-10/A0001").typed.found).toBe("N-0001");
  });
});

describe("what somebody types about a snag", () => {
  test("takes the first row in which nothing stands, and the same one once it has a row", () => {
    const first = withBlocks(sheet, snagBlocks(sheet, tab, null, { about: 2, foundWrong: "Scratch" }));
    const one = readTab(first)!;
    const second = withBlocks(first, snagBlocks(first, one, null, { foundWrong: "Dent" }));
    const third = readTab(withBlocks(second, snagBlocks(second, readTab(second)!, one.snags[0]!.row, { closed: "Closed", by: "EF" })))!;
    expect(third.snags.map(({ id, stepId, typed }) => [id, stepId, typed.foundWrong, typed.closed])).toEqual([["S-1", "T-10", "Scratch", "Closed"], ["S-2", "", "Dent", null]]);
  });

  test("is refused with what to do where no row is left", () => {
    const full = withCells(sheet, ...Array.from({ length: 15 }, (_, index) => [tab.places.snagsRow + 2 + index, tab.places.columns.step!, `Snag ${index}`] as const));
    const problem = problemOf(() => snagBlocks(full, readTab(full)!, null, { foundWrong: "One more" }));
    expect(problem.sentence).toBe('Tab "North hall" has no blank row for snags left. Build it again, which adds some.');
  });
});
