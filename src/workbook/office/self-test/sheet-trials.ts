import { pageScale } from "../../../sheet";
import { setUpPrint } from "../print-setup";
import { validate } from "../validate";
import type { Trial } from "./trial";

/** What a list of choices may be long, in characters. */
const listLength = 255;

/** Column R: what may be typed into a cell. */
export const choiceTrial: Trial = {
  subject: "Choices",
  probes: [{ id: "choice-length", tried: `A list of choices of ${listLength} characters is set`, expected: `a list of ${listLength} characters` }],
  find: async (bench) => {
    const items = ["x".repeat(100), "y".repeat(100), "z".repeat(listLength - 202)];
    await bench.set((sheet) => {
      validate(sheet.getRangeByIndexes(0, 17, 1, 1).dataValidation, { rule: { kind: "list", items }, message: "Choose one.", strict: true });
    });
    return bench.ask((sheet) => {
      const validation = sheet.getRangeByIndexes(0, 17, 1, 1).dataValidation.load("rule");
      return () => {
        const source = validation.rule.list?.source;
        return [typeof source === "string" ? `a list of ${source.length} characters` : "no list of its own"];
      };
    });
  },
};

const widths = [20, 60, 90];

/** How the sheet prints, as tabs are set up. */
export const pageTrial: Trial = {
  subject: "Page",
  probes: [
    { id: "page-orientation", tried: "The page is set across", expected: "Landscape" },
    { id: "page-scale", tried: "The page is set to the scale at which its columns fit", expected: `${pageScale("landscape", widths)} %` },
    { id: "page-titles", tried: "Rows 1 to 2 are set to be repeated", expected: "$1:$2" },
    { id: "page-breaks", tried: "Breaks are set before rows 11 and 21", expected: "2 breaks" },
    { id: "page-footer", tried: "A footer is set", expected: "Page &P of &N" },
  ],
  find: async (bench) => {
    await bench.set((sheet) => {
      const print = { orientation: "landscape", fitToWidth: true, titleRows: { row: 0, rows: 2 }, footer: "Page &P of &N", breaksBefore: [10, 20] } as const;
      setUpPrint(sheet, print, { name: "", rows: [], styles: {}, columnWidths: widths });
    });
    return bench.ask((sheet) => {
      const { pageLayout: layout } = sheet;
      layout.load("orientation,zoom");
      const titles = layout.getPrintTitleRowsOrNullObject().load("address");
      const breaks = sheet.horizontalPageBreaks.load("items/columnIndex");
      const { defaultForAllPages: page } = layout.headersFooters;
      page.load("centerFooter");
      return () => [
        layout.orientation,
        layout.zoom.scale === undefined ? "no scale of its own" : `${layout.zoom.scale} %`,
        titles.isNullObject ? "no rows" : titles.address.replace(/^.*!/, ""),
        `${breaks.items.length} breaks`,
        page.centerFooter,
      ];
    });
  },
};

/** Widths and heights, and which of two conditional formats wins. */
export const lookTrial: Trial = {
  subject: "Looks",
  probes: [
    { id: "look-width", tried: "A column is set to 100 points", expected: "about 100 points" },
    { id: "look-height", tried: "A row is set to 30 points", expected: "about 30 points" },
    { id: "look-conditional", tried: "Two conditional formats are added to a cell; the one that wins", expected: "the one added last" },
  ],
  find: async (bench) => {
    const formulas = ["=1=1", "=2=2"];
    await bench.set((sheet) => {
      const range = sheet.getRangeByIndexes(30, 17, 1, 1);
      range.format.columnWidth = 100;
      range.format.rowHeight = 30;
      for (const formula of formulas) range.conditionalFormats.add("Custom").custom.rule.formula = formula;
    });
    return bench.ask((sheet) => {
      const range = sheet.getRangeByIndexes(30, 17, 1, 1);
      const format = range.format.load("columnWidth,rowHeight");
      const first = range.conditionalFormats.getItemAt(0).custom.rule.load("formula");
      return () => [about(format.columnWidth, 100), about(format.rowHeight, 30), first.formula === formulas[1] ? "the one added last" : "the one added first"];
    });
  },
};

/** Programs round sizes to whole pixels. */
function about(points: number, wanted: number): string {
  return Math.abs(points - wanted) <= 1 ? `about ${wanted} points` : `${points} points`;
}

/** What the program tells of itself. */
export const memberTrial: Trial = {
  subject: "Members",
  probes: [{ id: "member-notes", tried: "The number of notes on a sheet is asked for", expected: null }],
  find: (bench) => bench.ask((sheet) => () => ["notes" in sheet ? "notes can be counted" : "notes cannot be counted"]),
};

