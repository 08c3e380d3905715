import { cellText, planPrintout, type PackBlock, type Printout } from "../../../src/planning/printouts";
import type { SheetPlan } from "../../../src/sheet";
import { lookFaults, lookOf } from "../../support/sheet-look";

const block = (more: Partial<PackBlock> = {}): PackBlock => ({ title: "Arrays", note: "", headers: ["Array", "TB"], lines: [["n-1", 16]], none: "No arrays.", ...more });

function sheetOf(more: Partial<Printout> = {}): SheetPlan {
  const printout: Printout = {
    title: "Handover: North hall", mark: "build 3, not sealed", fileTitle: "Handover: North hall, build 3",
    facts: "Try out, site North hall, build 3, made 2026-03-09 10:00", standing: "All settled.", isComplete: true, madeAt: "2026-03-09 10:00", paper: "A4",
    blocks: [block()], pictures: [], signatures: ["For the site, name and date", "For the installer, name and date"],
    ...more,
  };
  return planPrintout("North hall handover", printout, [22, 18, 44, 24, 20, 18, 18, 28]);
}

const cellsOf = ({ rows }: SheetPlan) => rows.map((cells) => cells.map(({ value = "", style }) => [value, style]));

describe("the sheet of a printout", () => {
  test("begins with its title, its facts and what is open, and ends with two lines to sign on", () => {
    const sheet = sheetOf({ isComplete: false, standing: "Not complete: 2 required steps and 0 snags open." });
    expect(cellsOf(sheet).slice(0, 3)).toEqual([
      [["Handover: North hall", "title"]],
      [["Try out, site North hall, build 3, made 2026-03-09 10:00", "note"]],
      [["Not complete: 2 required steps and 0 snags open.", "open"]],
    ]);
    expect(cellsOf(sheetOf())[2]).toEqual([["All settled.", "complete"]]);
    expect(sheet.rows.at(-1)!.map(({ value }) => value)).toEqual(["For the site, name and date", undefined, undefined, undefined, "For the installer, name and date", undefined, undefined]);
    expect(sheet.print).toMatchObject({ orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] });
  });

  test("shows each block as a band with its note, headers and lines, or the sentence in their place", () => {
    const band = (title: string) => [[title, "section"], ...Array.from({ length: 7 }, () => ["", "section"])];
    const cells = cellsOf(sheetOf({ blocks: [block({ note: "As planned." }), block({ title: "Hosts", lines: [], note: "As planned.", none: "No hosts." })] }));
    expect(cells.slice(3, 11)).toEqual([
      [], band("Arrays"), [["As planned.", "note"]], [["Array", "header"], ["TB", "header"]], [["n-1", "text"], [16, "number"]],
      [], band("Hosts"), [["No hosts.", "note"]],
    ]);
  });

  test("frames a cell with nothing to say, and makes a row as high as its longest text", () => {
    const lines = [["n-1", ""], ["a\nb", ""], ["x".repeat(20), ""], ["x\n".repeat(100), ""]];
    const { rows, rowHeights } = sheetOf({ blocks: [block({ lines })] });
    const first = rows.findIndex((cells) => cells[0]?.value === "n-1");
    expect(rows[first]![1]).toEqual({ style: "text" });
    // Lines of 15 points, and 4 around them; 409 points are the most that a row takes.
    expect([0, 1, 2, 3].map((at) => rowHeights![first + at])).toEqual([undefined, 34, 34, 409]);
  });

  test("can be read and printed: every style is there, no text is faint", () => {
    const sheet = sheetOf();
    expect(lookFaults(sheet)).toEqual([]);
    expect(sheet.columnWidths).toHaveLength(8);
    expect(Object.entries(sheet.styles).map(([name, style]) => `${name}: ${lookOf(style)}`)).toEqual([
      "title: bold 18 pt #17352d",
      "note: italic #3d4f49",
      "complete: bold 12 pt #17352d",
      "open: bold 12 pt #8c1c13",
      "section: bold 12 pt #17352d on #cfe0da",
      "header: bold 10 pt on #e6eeeb, wrapped, middle, frame all #b9c4c0",
      "text: wrapped, top, frame all #b9c4c0, as @",
      "number: center, top, frame all #b9c4c0",
      "line: 9 pt, frame bottom #17352d",
    ]);
  });

  test("holds amounts as numbers, and shows each with the decimals of its currency", () => {
    const { rows, styles } = sheetOf({ blocks: [block({ lines: [["yen", { amount: 1234567, decimals: 0 }], ["dinar", { amount: 1234.5, decimals: 3 }]] })] });
    expect(rows.flat().filter(({ style }) => style?.startsWith("amount"))).toEqual([
      { value: "TB", style: "amountHeader" }, { value: 1234567, style: "amount0" }, { value: 1234.5, style: "amount3" },
    ]);
    expect([styles["amount0"]?.format, styles["amount3"]?.format]).toEqual(["#,##0", "#,##0.000"]);
  });
});

test.each([
  [{ amount: 0, decimals: 2 }, "0.00"],
  [{ amount: 1234567.5, decimals: 2 }, "1,234,567.50"],
  [{ amount: 999, decimals: 0 }, "999"],
  [{ amount: -1000, decimals: 3 }, "-1,000.000"],
  [12.5, "12.5"],
  ["n-1", "n-1"],
])("the cell %j of a printout is written %s", (cell, text) => {
  expect(cellText(cell)).toBe(text);
});
