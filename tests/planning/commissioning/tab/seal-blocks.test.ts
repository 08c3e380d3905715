import { checkTabSeal, readTab, reopenBlocks, sealBlocks, sealRowOf } from "../../../../src/planning/commissioning/tab";
import { at } from "../../../../src/planning/commissioning/tab/tab-columns";
import { sealLine } from "../../../support/job-records";
import { builtTab, withBlocks, withCells } from "../../../support/filled-tab";
import { tabReading } from "../../../support/tab-reading";

const sheet = builtTab();
const tab = readTab(sheet)!;
const act = { by: "AB", date: "2026-03-09 14:20" };

/** Lists the cells of a block that write something, as column and value. */
const written = ({ cells }: { readonly cells: readonly (readonly ({ readonly value?: unknown } | null)[])[] }) =>
  cells[0]!.flatMap((cell, column) => (cell === null ? [] : [[column, cell.value]]));

describe("sealing a tab", () => {
  const isFilled = (row: number): boolean => sheet.values[row]!.some((value) => value !== null && value !== "");

  test("writes first the digests of all rows in which something stands, but for that of the headers, and leaves those between alone", () => {
    const digests = sealBlocks(sheet, tab, act).slice(0, -2);
    for (const { column, cells } of digests) expect([column, ...new Set(cells.map((line) => line.length))]).toEqual([at.digest, 1]);
    const rows = digests.flatMap(({ row, cells }) => cells.map((_, index) => row + index));
    expect(rows).toEqual(sheet.values.flatMap((_, row) => (isFilled(row) && row !== tab.headerRow ? [row] : [])));
    expect(digests[0]!.cells[0]![0]!.value).toMatch(/^1:([.=~]|[A-Z2-7]{5})+$/);
  });

  test("writes then the line with day, code and name, and hidden the version with the rows that are sealed, below the labels or the last line", () => {
    const line = sealBlocks(sheet, tab, act).at(-2)!;
    expect([line.row, line.column]).toEqual([tab.places.sealsRow + 2, 0]);
    expect(written(line)).toEqual([
      [at.stepId, "2026-03-09 14:20"], [at.step, expect.stringMatching(/^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/)], [at.subject, "AB"], [at.key, "#seal"],
      [at.digest, expect.stringMatching(/^1 1,3-6,(\d+(-\d+)?,)+\d+(-\d+)? [A-Z2-7]+$/)],
    ]);
    expect([sealRowOf(tabReading()), sealRowOf(tabReading({ seals: [sealLine({ row: 43 }), sealLine({ row: 47 })] }))]).toEqual([43, 48]);
  });

  test("counts the line last, on a tab that was built with a count", () => {
    expect(sealBlocks(sheet, tab, act).at(-1)).toEqual({ row: tab.markRow, column: at.retest, cells: [[{ value: 1 }]] });
    const without = withCells(sheet, [tab.markRow, at.retest, null]);
    expect(sealBlocks(without, readTab(without)!, act).at(-1)!.row).toBe(tab.places.sealsRow + 2);
  });

  test("empties the digest of a row in which nothing stands any more", () => {
    const { row } = tab.steps[0]!;
    const emptied = withCells(withBlocks(sheet, sealBlocks(sheet, tab, act)), ...sheet.values[row]!.slice(0, at.digest).map((_, column) => [row, column, null] as const));
    const blocks = sealBlocks(emptied, readTab(emptied)!, act);
    expect(blocks.find((block) => block.row <= row && row < block.row + block.cells.length)!.cells.at(0)).toBeDefined();
    expect(withBlocks(emptied, blocks).values[row]![at.digest]).toBeNull();
  });

  test("leaves a row that was emptied since an earlier seal out of the next one, which holds", () => {
    const { row } = tab.steps[0]!;
    const once = withBlocks(sheet, sealBlocks(sheet, tab, act));
    const emptied = withCells(once, ...sheet.values[row]!.slice(0, at.digest).map((_, column) => [row, column, null] as const));
    const twice = withBlocks(emptied, sealBlocks(emptied, readTab(emptied)!, act));
    expect(checkTabSeal(twice, readTab(twice)!)).toMatchObject({ holds: true, changed: [] });
  });

  test("goes by the columns as they stand, and writes nothing where one is gone", () => {
    const wider = { ...sheet, values: sheet.values.map((line) => [null, ...line]), formulas: sheet.formulas.map((line) => [null, ...line]) };
    expect(written(sealBlocks(wider, readTab(wider)!, act).at(-2)!)).toContainEqual([at.subject + 1, "AB"]);
    expect(() => sealBlocks(sheet, { ...tab, places: { ...tab.places, columns: { ...at, digest: undefined } } }, act)).toThrow(
      'The header "Digest" of "North hall" is gone. Undo that, or write it back over its column.',
    );
  });
});

describe("reopening a tab", () => {
  test("writes day, name and reason into its last seal, which stays", () => {
    const [line, ...more] = reopenBlocks(tabReading({ seals: [sealLine({ row: 43 }), sealLine({ row: 44 })] }), { by: "EF", date: "2026-03-10", reason: "why" });
    expect(more).toEqual([]);
    expect([line!.row, line!.column]).toEqual([44, 0]);
    expect(written(line!)).toEqual([[at.expected, "2026-03-10"], [at.found, "EF"], [at.note, "why"]]);
  });

  test("writes nothing where there is no seal", () => {
    expect(reopenBlocks(tabReading(), { by: "EF", date: "2026-03-10", reason: "why" })).toEqual([]);
  });
});
