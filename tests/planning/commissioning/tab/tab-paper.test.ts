import { columnWidthsOn, onPaper, pageBreaks, rowHeight, writingHeight, type PageRows, type PaperRow } from "../../../../src/planning/commissioning/tab/tab-paper";
import { at, shownColumns, tabColumnKeys } from "../../../../src/planning/commissioning/tab/tab-columns";
import { tabStyles } from "../../../../src/planning/commissioning/tab/tab-styles";
import type { Cell, Paper } from "../../../../src/sheet";

const rowWith = (column: keyof typeof at, cell: Cell): Cell[] => tabColumnKeys.map((key) => (key === column ? cell : {}));
/** Columns of 20 characters each. */
const widths = tabColumnKeys.map(() => 20);
const row = (cells: readonly Cell[], more: Partial<PaperRow> = {}): PaperRow => ({ cells, merges: [], least: 0, ...more });
const heightOf = (column: keyof typeof at, value: string, style = "text"): number => rowHeight(row(rowWith(column, { value, style })), widths);
/** Height of a row of so many lines: 15 points each. */
const lines = (count: number): number => Math.max(18, count * 15);

describe("the height of a row", () => {
  test("is that of one line, but at least 18 points and at most the 409 that a sheet takes", () => {
    expect(rowHeight(row([]), widths)).toBe(18);
    expect(rowHeight(row([], { least: 25 }), widths)).toBe(25);
    expect(heightOf("step", "short")).toBe(18);
    expect(heightOf("step", "a\n".repeat(100))).toBe(409);
  });

  test("follows the longest text of the columns that people see", () => {
    // A column of 20 is 145 pixels or 108.75 points, of which a digit takes 5.58 (Carlito: 1,038 of 2,048 units at 11 points), and the cell keeps 2 free.
    expect(heightOf("step", "0".repeat(19))).toBe(lines(1));
    expect(heightOf("step", "0".repeat(20))).toBe(lines(2));
    expect(heightOf("step", "0".repeat(39))).toBe(lines(3));
    expect(heightOf("key", "0".repeat(400))).toBe(lines(1));
    const both = rowWith("step", { value: "0".repeat(20), style: "text" });
    both[at.note] = { value: "a\nb\nc", style: "text" };
    expect(rowHeight(row(both), widths)).toBe(lines(3));
  });

  test("breaks between words, and after each paragraph", () => {
    expect(heightOf("step", `${"0".repeat(9)} ${"0".repeat(9)}`)).toBe(lines(1));
    expect(heightOf("step", `${"0".repeat(9)} ${"0".repeat(10)}`)).toBe(lines(2));
    expect(heightOf("step", `${"0".repeat(15)} ${"0".repeat(15)} 0`)).toBe(lines(2));
    expect(heightOf("step", "a\nb\n")).toBe(lines(3));
    expect(heightOf("step", `a ${"0".repeat(30)}`)).toBe(lines(3));
  });

  test("counts narrow letters as narrow, wide ones as wide, and ideographs as squares", () => {
    expect(heightOf("step", "i".repeat(42))).toBe(lines(1));
    expect(heightOf("step", "W".repeat(12))).toBe(lines(2));
    expect(heightOf("step", "架".repeat(9))).toBe(lines(1));
    expect(heightOf("step", "架".repeat(10))).toBe(lines(2));
  });

  test("takes bold text wider, merged cells together, and titles, notes and numbers as one line", () => {
    expect(heightOf("step", "0".repeat(18), "expected")).toBe(lines(1));
    expect(heightOf("step", "0".repeat(19), "expected")).toBe(lines(2));
    expect(heightOf("step", "0".repeat(19), "label")).toBe(lines(2));
    expect(heightOf("no", "0".repeat(400), "section")).toBe(lines(1));
    expect(heightOf("no", "0".repeat(400), "note")).toBe(lines(1));
    expect(rowHeight(row(rowWith("no", { value: 123_456_789, style: "text" })), [2, ...widths])).toBe(lines(1));
    const merged = (count: number, column: number): number =>
      rowHeight(row(rowWith("no", { value: "0".repeat(count), style: "text" }), { merges: [{ row: 0, column, rows: 1, columns: 2 }] }), widths);
    // Two columns that run together are 217.5 points.
    expect([merged(38, at.no), merged(39, at.no), merged(38, at.stepId)]).toEqual([lines(1), lines(2), lines(2)]);
  });
});

/** Sides in points, of 72 an inch: ISO 216 (A4 is 210 by 297 mm), and 8.5 by 11 inches. */
const sides = { A4: { long: (297 / 25.4) * 72, short: (210 / 25.4) * 72 }, Letter: { long: 11 * 72, short: 8.5 * 72 } } as const;
const papers = ["A4", "Letter"] as const;

describe("a tab on paper", () => {
  const print = (paper: Paper) => ({ ...onPaper(paper), scale: onPaper(paper).scale!, marginsMm: onPaper(paper).marginsMm! });

  test("lies across, is not fitted by the program, and begins with page 1 whatever is printed along", () => {
    expect(onPaper("Letter")).toMatchObject({ orientation: "landscape", fitToWidth: false, paper: "Letter", firstPage: 1 });
  });

  test("keeps 10 mm free on every side, and header and footer within those", () => {
    const { left, right, top, bottom, header = 0, footer = 0 } = print("A4").marginsMm;
    expect(Math.min(left, right, top, bottom)).toBeGreaterThanOrEqual(10);
    // A line of 11 points is 4 mm high.
    expect([header, top - header - 4, footer, bottom - footer - 4].every((room) => room >= 2)).toBe(true);
  });

  test.each(papers)("prints at 9 points or more on %s, in columns that fit its width and leave nothing of it empty", (paper) => {
    const { scale, marginsMm: { left, right } } = print(paper);
    const sizes = Object.entries(tabStyles).flatMap(([name, style]) => ("fontSize" in style && !name.startsWith("hidden") ? [style.fontSize] : []));
    expect((Math.min(...sizes) * scale) / 100).toBeGreaterThanOrEqual(9);
    const page = sides[paper].long - ((left + right) / 25.4) * 72;
    for (const rows of [[], [row(rowWith("subject", { value: "0 ".repeat(60), style: "text" }))]]) {
      // 7 pixels a character and 5 beside them, of 96 an inch.
      const width = columnWidthsOn(paper, rows).slice(0, shownColumns).reduce((sum, one) => sum + Math.round(one * 7 + 5) * 0.75, 0) * (scale / 100);
      expect(width).toBeLessThanOrEqual(page);
      expect(width).toBeGreaterThan(page - 10);
    }
  });

  test("has rows of 7 mm where people write", () => {
    expect(((writingHeight * print("A4").scale) / 100 / 72) * 25.4).toBeGreaterThanOrEqual(7);
  });

  test("gives what the paper leaves to the column that makes its rows lowest, and the rest to the step", () => {
    const least = columnWidthsOn("A4", []);
    const withText = (column: keyof typeof at, count: number, more: Partial<PaperRow> = {}) =>
      columnWidthsOn("A4", [row(rowWith(column, { value: "0".repeat(count), style: "text" }), more)]).map((width, index) => Math.round((width - least[index]!) * 10) / 10);
    // For is 10 characters wide: 19 digits take 20, of which three in a hundred are kept free.
    expect(withText("subject", 19)[at.subject]).toBe(10);
    expect(withText("subject", 19)[at.step]).toBe(-10);
    // Nobody is the better for it: a text that fits, a row that is higher anyway, and one whose cells run together.
    expect(withText("subject", 9).every((more) => more === 0)).toBe(true);
    expect(withText("subject", 19, { least: 40 }).every((more) => more === 0)).toBe(true);
    expect(withText("subject", 19, { merges: [{ row: 0, column: at.subject, rows: 1, columns: 2 }] }).every((more) => more === 0)).toBe(true);
  });
});

describe("the breaks between pages", () => {
  // A4 is 210 mm high, of which 21 are margins; at 82 % that is 653 points of rows, of which 6 stay free.
  const room = (((210 - 21) / 25.4) * 72) / 0.82 - 6;
  const rows = (...heights: number[]): number[] => [0, ...heights.map((part) => part * room)];
  const none: PageRows = { first: 1, whole: new Map(), heads: new Set(), blank: new Set() };
  const breaks = (heights: readonly number[], more: Partial<PageRows> = {}, paper: Paper = "A4"): number[] => pageBreaks(heights, { ...none, ...more }, paper);

  test.each<[string, number[], number[]]>([
    ["none where all fits", rows(0.5, 0.49), []],
    ["before the row that does not fit", rows(0.5, 0.3, 0.3), [3]],
    ["before each that does not fit", rows(0.9, 0.9, 0.2), [2, 3]],
    ["counted from the top of each page", rows(0.3, 0.6, 0.6, 0.3, 0.2), [3, 5]],
    ["above and below a row that is higher than a page", rows(0.3, 1.5, 0.2), [2, 3]],
    ["none without rows", rows(), []],
  ])("are %s", (_, heights, expected) => {
    expect(breaks(heights)).toEqual(expected);
  });

  test("follow the paper: Letter is higher than A4 when both lie across", () => {
    expect(breaks(rows(0.5, 0.51))).toEqual([2]);
    expect(breaks(rows(0.5, 0.51), {}, "Letter")).toEqual([]);
  });

  test.each<[string, number[], number, number[]]>([
    ["before one that fits a page of its own", rows(0.5, 0.3, 0.3), 4, [2]],
    ["within one that no page holds", rows(0.5, 0.4, 0.7), 4, [3]],
    ["nowhere before one that fits the rest", rows(0.5, 0.25, 0.2, 0.9), 4, [4]],
  ])("stand, where rows are better kept whole, %s", (_, heights, to, expected) => {
    expect(breaks(heights, { whole: new Map([[2, to]]) })).toEqual(expected);
  });

  test("never part a title or labels from the row below, unless no page holds both", () => {
    const heads = new Set([2, 3]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.2, 0.1), { heads })).toEqual([2]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.2, 0.1))).toEqual([4]);
    expect(breaks(rows(0.7, 0.1, 0.1, 0.9), { heads })).toEqual([2, 4]);
    expect(breaks(rows(0.7, 0.1, 0.1), { heads })).toEqual([]);
  });

  test("leave no page with blank rows alone: what comes below them stands there too", () => {
    const blank = new Set([3]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.95), { blank })).toEqual([3]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.95))).toEqual([3, 4]);
    expect(breaks(rows(0.5, 0.45, 0.1, 0.95), { whole: new Map([[4, 5]]), blank })).toEqual([3]);
    expect(breaks(rows(0.5, 0.4, 0.05, 0.2), { blank })).toEqual([4]);
  });

  test("count the headers on every page, and what stands above them on the first alone", () => {
    const heights = [0.3, 0.2, 0.4, 0.5, 0.4, 0.3].map((part) => part * room);
    expect(breaks(heights, { first: 2 })).toEqual([3, 4]);
    expect(breaks([0, ...heights.slice(1)], { first: 2 })).toEqual([3, 4]);
    expect(breaks(heights.map((height, row) => (row === 1 ? 0 : height)), { first: 2 })).toEqual([3, 5]);
  });
});
