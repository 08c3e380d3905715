import type { ClientBuild } from "../support/host-workbook/client-build";
import { hostWorkbook } from "../support/host-workbook/host-workbook";

type Work = (sheet: Excel.Worksheet, workbook: Excel.Workbook) => unknown;

/** What the host is documented, or known, to refuse. */
const refused: readonly (readonly [string, string, Work])[] = [
  ["a list of areas over 8,000 characters", "InvalidArgument", (sheet) => { sheet.getRanges(Array.from({ length: 2_000 }, (_, row) => `A${row + 1}`).join()).format.wrapText = true; }],
  ["a choice of over 255 characters", "InvalidArgument", (sheet) => { sheet.getRange("A1").dataValidation.rule = { list: { inCellDropDown: true, source: "x".repeat(256) } }; }],
  ["a text over 32,767 characters", "InvalidArgument", (sheet) => { sheet.getRangeByIndexes(0, 0, 1, 1).formulas = [["x".repeat(32_768)]]; }],
  ["a formula over 8,192 characters", "InvalidArgument", (sheet) => { sheet.getRangeByIndexes(5, 0, 1, 1).formulas = [[`=1${"+1".repeat(4_096)}`]]; }],
  ["rows of another number than the range has", "InvalidArgument", (sheet) => { sheet.getRangeByIndexes(0, 0, 2, 1).formulas = [["x"]]; }],
  ["a range over the edge of the sheet", "InvalidArgument", (sheet) => sheet.getRangeByIndexes(0, 16_384, 1, 1).load("rowIndex")],
  ["more than 5,000,000 cells at once", "OperationCellsExceedLimit", (sheet) => sheet.getRangeByIndexes(0, 0, 1_000_000, 6).load("values")],
  ["a sheet that is not there", "ItemNotFound", (_sheet, { worksheets }) => worksheets.getItem("Gone").load("name")],
  ["a sheet name that is taken, in another case", "ItemAlreadyExists", (_sheet, { worksheets }) => worksheets.add("SHEET1")],
  ["a sheet name that holds a colon", "InvalidArgument", (_sheet, { worksheets }) => worksheets.add("a:b")],
  ["hiding the last sheet in sight", "InvalidOperation", (sheet) => { sheet.visibility = "VeryHidden"; }],
  ["a table over another", "TableOverlap", (sheet) => { sheet.tables.add("A1:B3", true); sheet.tables.add("B2:C3", true); }],
  ["a table over merged cells", "MergedRangeConflict", (sheet) => { sheet.getRangeByIndexes(2, 0, 1, 2).merge(false); sheet.tables.add("A1:B3", true); }],
  ["merging cells of a table", "InvalidOperation", (sheet) => { sheet.tables.add("A1:B3", true); sheet.getRangeByIndexes(1, 0, 1, 2).merge(false); }],
  ["a page scale below 10 %", "InvalidArgument", (sheet) => { sheet.pageLayout.zoom = { scale: 9 }; }],
  ["a colour that is none", "InvalidArgument", (sheet) => { sheet.getRange("A1").format.fill.color = "papaya"; }],
];

const builds: readonly ClientBuild[] = ["web", "Windows", "Mac", "tablet"];

describe.each(builds)("the spreadsheet program behind the client for %s", (build) => {
  const open = () => hostWorkbook({ build, sheets: [{ name: "Sheet1", values: [["Array", "Drives", "Size"]] }] });
  const codeOf = (book: ReturnType<typeof open>, work: Work): Promise<unknown> =>
    book.host
      .run(async (context) => {
        work(context.workbook.worksheets.getItem("Sheet1"), context.workbook);
        await context.sync();
      })
      .then(() => null, (thrown: unknown) => (thrown instanceof Error && "code" in thrown ? thrown.code : thrown));

  test.each(refused)("refuses %s", async (_what, code, work) => {
    expect(await codeOf(open(), work)).toBe(code);
  });

  test("refuses a member of a set it does not know", async () => {
    expect(await codeOf(open(), (sheet) => { sheet.tables.getItem("T").resize("A1:B2"); })).toBe("ApiNotFound");
  });

  test("keeps what was done before it refused", async () => {
    const book = open();
    await codeOf(book, (sheet, { worksheets }) => {
      sheet.getRangeByIndexes(4, 0, 1, 1).formulas = [["kept"]];
      worksheets.getItem("Gone").delete();
    });
    expect(book.value("Sheet1", 4, 0)).toBe("kept");
  });

  test("refuses a request above 5 MB, and an answer", async () => {
    const book = open();
    const texts = (rows: number) => Array.from({ length: rows }, () => ["x".repeat(32_000)]);
    expect(await codeOf(book, (sheet) => { sheet.getRangeByIndexes(0, 3, 160, 1).formulas = texts(160); })).toBe("RequestPayloadSizeLimitExceeded");
    for (const row of [0, 100]) await codeOf(book, (sheet) => { sheet.getRangeByIndexes(row, 3, 100, 1).formulas = texts(100); });
    expect(await codeOf(book, (sheet) => sheet.getRangeByIndexes(0, 3, 200, 1).load("values"))).toBe("ResponsePayloadSizeLimitExceeded");
  });

  test("refuses while a cell is edited, and does what waits once it is not", async () => {
    const book = open();
    const enter = book.editCell();
    expect(await codeOf(book, (sheet) => sheet.load("name"))).toBe("InvalidOperationInCellEditMode");
    let done = false;
    const waiting = book.host.look(async (context) => {
      context.workbook.worksheets.load("items/name");
      await context.sync();
      done = true;
    });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(done).toBe(false);
    enter();
    await waiting;
    expect(done).toBe(true);
  });

  test("puts a conditional format that is added later before those that were there", async () => {
    const book = open();
    await codeOf(book, (sheet) => {
      for (const formula of ["=1", "=2"]) sheet.getRange("A1").conditionalFormats.add("Custom").custom.rule.formula = formula;
    });
    expect(book.sheet("Sheet1").conditionalFormats.map(({ settings }) => settings.get("rule.formula"))).toEqual(["=2", "=1"]);
  });
});
