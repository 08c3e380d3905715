import { pageBreaks, rowHeight, type PageRows } from "../../../../src/planning/commissioning/tab/tab-paper";
import { at, shownColumns, tabColumnKeys, tabColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import { tabStyles } from "../../../../src/planning/commissioning/tab/tab-styles";
import type { Cell } from "../../../../src/sheet";

const rowWith = (column: keyof typeof at, cell: Cell): Cell[] => tabColumnKeys.map((key) => (key === column ? cell : {}));
const heightOf = (column: keyof typeof at, value: string, style = "text"): number => rowHeight(rowWith(column, { value, style }), []);
/** Height of a row of so many lines: 14.5 points each and 5 around them. */
const lines = (count: number): number => count * 14.5 + 5;

describe("the height of a row", () => {
  test("is that of one line, but at least 18 points and at most the 409 that a sheet takes", () => {
    expect(rowHeight([], [])).toBe(lines(1));
    expect(heightOf("step", "short")).toBe(lines(1));
    expect(heightOf("step", "a\n".repeat(100))).toBe(409);
  });

  test("follows the longest text of the columns that people see", () => {
    // The column Step is 24 characters wide: one is kept free, and prose runs narrower by 0.94, so 24 fit.
    expect(heightOf("step", "x".repeat(24))).toBe(lines(1));
    expect(heightOf("step", "x".repeat(25))).toBe(lines(2));
    expect(heightOf("step", "x".repeat(56))).toBe(lines(3));
    expect(heightOf("key", "x".repeat(400))).toBe(lines(1));
    const both = rowWith("step", { value: "x".repeat(28), style: "text" });
    both[at.note] = { value: "a\nb\nc", style: "text" };
    expect(rowHeight(both, [])).toBe(lines(3));
  });

  test("breaks between words, and after each paragraph", () => {
    expect(heightOf("step", `${"x".repeat(12)} ${"y".repeat(11)}`)).toBe(lines(1));
    expect(heightOf("step", `${"x".repeat(12)} ${"y".repeat(12)}`)).toBe(lines(2));
    expect(heightOf("step", `${"x".repeat(20)} ${"y".repeat(20)} z`)).toBe(lines(2));
    expect(heightOf("step", "a\nb\n")).toBe(lines(3));
    expect(heightOf("step", `a ${"x".repeat(33)}`)).toBe(lines(3));
    expect([11, 12].map((last) => heightOf("step", `a ${"x".repeat(10)} ${"y".repeat(last)}`))).toEqual([lines(1), lines(2)]);
  });

  test("takes bold text wider, merged cells together, and titles, notes and numbers as one line", () => {
    expect(heightOf("step", "x".repeat(23), "expected")).toBe(lines(1));
    expect(heightOf("step", "x".repeat(24), "expected")).toBe(lines(2));
    expect(heightOf("step", "x".repeat(24), "label")).toBe(lines(2));
    expect(heightOf("no", "x".repeat(400), "section")).toBe(lines(1));
    expect(heightOf("no", "x".repeat(400), "note")).toBe(lines(1));
    expect(rowHeight(rowWith("no", { value: 123_456_789, style: "text" }), [])).toBe(lines(1));
    // No. and Step id together are 14 characters wide: 13 and a little.
    const merged = [{ row: 0, column: at.no, rows: 1, columns: 2 }];
    expect(rowHeight(rowWith("no", { value: "x".repeat(13), style: "text" }), merged)).toBe(lines(1));
    expect(rowHeight(rowWith("no", { value: "x".repeat(14), style: "text" }), merged)).toBe(lines(2));
    expect(rowHeight(rowWith("no", { value: "x".repeat(10), style: "text" }), [{ ...merged[0]!, column: 1 }])).toBe(lines(3));
  });
});

describe("the breaks between pages", () => {
  // Letter (ANSI Y14.1) is 691 points wide inside usual margins, A4 (ISO 216) 487 high. The 14 columns that people see are 149.9 characters of 7
  // pixels and 5 more each, 1,123 whole pixels or 842 points: at 82 % they fit the one, and 594 points of rows the other, of which 60 stand for
  // the two rows at the top.
  const room = 487 / 0.82 - 60;
  const rows = (...heights: number[]): number[] => heights.map((part) => part * room);
  const breaks = (heights: readonly number[], more: Partial<PageRows> = {}): number[] =>
    pageBreaks(heights, { first: 0, whole: new Map(), heads: new Set(), fresh: new Set(), blank: new Set(), ...more });

  test.each<[string, number[], number[]]>([
    ["none where all fits", rows(0.5, 0.49), []],
    ["before the row that does not fit", rows(0.5, 0.3, 0.3), [2]],
    ["before each that does not fit", rows(0.9, 0.9, 0.2), [1, 2]],
    ["counted from the top of each page", rows(0.3, 0.6, 0.6, 0.3, 0.2), [2, 4]],
    ["above and below a row that is higher than a page", rows(0.3, 1.5, 0.2), [1, 2]],
    ["none without rows", [], []],
  ])("are %s", (_, heights, expected) => {
    expect(breaks(heights)).toEqual(expected);
  });

  test.each<[string, number[], number, number[]]>([
    ["before one that fits a page of its own", rows(0.5, 0.3, 0.3), 3, [1]],
    ["within one that no page holds", rows(0.5, 0.4, 0.7), 3, [2]],
    ["nowhere before one that fits the rest", rows(0.5, 0.25, 0.2, 0.9), 3, [3]],
  ])("stand, where rows are better kept whole, %s", (_, heights, to, expected) => {
    expect(breaks(heights, { whole: new Map([[1, to]]) })).toEqual(expected);
  });

  test("never part a title or labels from the row below, unless no page holds both", () => {
    const heads = new Set([1, 2]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.2, 0.1), { heads })).toEqual([1]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.2, 0.1))).toEqual([3]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.9), { heads })).toEqual([1, 3]);
    expect(breaks(rows(0.7, 0.1, 0.1), { heads })).toEqual([]);
  });

  test("stand before what begins a page in any case, but leave none empty", () => {
    expect(breaks(rows(0.1, 0.1, 0.1), { fresh: new Set([0, 2]) })).toEqual([2]);
  });

  test("leave no page with blank rows alone: what comes below them stands there too", () => {
    const blank = new Set([2]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.2), { fresh: new Set([3]), blank })).toEqual([2]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.2), { fresh: new Set([3]) })).toEqual([2, 3]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.95), { whole: new Map([[3, 4]]), blank })).toEqual([2]);
    expect(breaks(rows(0.5, 0.4, 0.05, 0.2), { fresh: new Set([3]), blank })).toEqual([3]);
  });

  test("count below the rows that stand again on every page", () => {
    expect(breaks(rows(0.3, 0.3, 0.5, 0.4), { first: 2 })).toEqual([]);
    expect(breaks(rows(0.3, 0.3, 0.5, 0.4))).toEqual([2]);
  });
});

test("the narrower of A4 and Letter takes the whole width at 9 points or more", () => {
  // ISO 216 and ANSI Y14.1: 297 mm and 11 inches long; a sheet leaves 0.7 inches on either side.
  const page = Math.min((297 / 25.4) * 72, 11 * 72) - 2 * 0.7 * 72;
  const width = tabColumnKeys.slice(0, shownColumns).reduce((sum, key) => sum + Math.round(tabColumns[key].width * 7 + 5) * 0.75, 0);
  const sizes = Object.entries(tabStyles).flatMap(([name, style]) => ("fontSize" in style && !name.startsWith("hidden") ? [style.fontSize] : []));
  const wholePercent = Math.floor((100 * page) / width);
  expect((Math.min(...sizes) * wholePercent) / 100).toBeGreaterThanOrEqual(9);
});
