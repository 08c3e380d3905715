import { Problem } from "../../../src/planning/text/problem";
import type { Cell, SheetPlan, SheetSnapshot } from "../../../src/sheet";
import { hostProblem } from "../../../src/workbook/office/host-problem";
import { unfinishedName } from "../../../src/workbook/office/sheet-steps";
import type { Edit } from "../../../src/workbook/port";
import { everySetting } from "../../contract/port-contract";
import type { ClientBuild } from "../../support/host-workbook/client-build";
import { hostWorkbook } from "../../support/host-workbook/host-workbook";

const builds: readonly ClientBuild[] = ["web", "Windows", "Mac", "tablet"];

const plan = (name: string, rows: readonly (readonly Cell[])[], more: Partial<SheetPlan> = {}): SheetPlan => ({ name, rows, styles: {}, columnWidths: [], ...more });
const add = (name: string, rows: readonly (readonly Cell[])[] = [[{ value: name }]], more: Partial<SheetPlan> = {}): Edit => ({ kind: "add-sheet", plan: plan(name, rows, more) });

/** A tab of as many steps, in fourteen columns with a style each, as commissioning tabs are. */
const tab = (steps: number): Edit => {
  const styles = { plain: { border: "all" }, found: { format: "@", locked: false, border: "all" }, head: { bold: true } } as const;
  const row = (index: number): Cell[] => Array.from({ length: 14 }, (_, column) => ({ value: `Step ${index}.${column}`, style: column === 5 ? "found" : index % 20 === 0 ? "head" : "plain" }));
  return add("Tab", Array.from({ length: steps }, (_, index) => row(index)), { styles });
};

describe("the number of syncs", () => {
  const twoSheets = () => hostWorkbook({ sheets: [{ name: "Sheet1", values: [["x"]] }, { name: "Tab 1", values: [["y"]] }] });
  const counted = async (work: (book: ReturnType<typeof hostWorkbook>) => Promise<unknown>, book = twoSheets()) => {
    const before = book.syncs();
    await work(book);
    return book.syncs() - before;
  };

  test("reading takes three: names, extents and cells; by name two", async () => {
    expect(await counted(({ port }) => port.read())).toBe(3);
    expect(await counted(({ port }) => port.read(["Sheet1"]))).toBe(2);
    expect(await counted(({ port }) => port.read(["Sheet1", "Nowhere"], "values"))).toBe(2);
  });

  test("reading by heads takes no more for sheets that are read so already, and one more for the rest of others", async () => {
    const long = () => hostWorkbook({ sheets: [{ name: "Sheet1", values: Array.from({ length: 9 }, (_, row) => [row]) }, { name: "Tab 1", values: [["tab"], ["of"], ["one"]] }] });
    const isWanted = (name: string) => () => ({ rows: 3, isWanted: (head: SheetSnapshot) => head.name === name });
    expect(await counted(({ port }) => port.read(isWanted("Tab 1"), "values"), long())).toBe(3);
    expect(await counted(({ port }) => port.read(isWanted("Sheet1"), "values"), long())).toBe(4);
    const { sheets } = await long().port.read(isWanted("Tab 1"), "values");
    expect(sheets.map(({ values }) => values)).toEqual([[[0], [1], [2]], [["tab"], ["of"], ["one"]]]);
  });

  test("reading names alone takes one, and empty sheets two", async () => {
    expect(await counted(({ port }) => port.read([]))).toBe(1);
    expect(await counted(({ port }) => port.read(), hostWorkbook())).toBe(2);
  });

  test.each([1, 100, 1000])("writing a tab of %i steps takes two: one to look, one to write", async (steps) => {
    expect(await counted(({ port }) => port.apply([tab(steps)]))).toBe(2);
  });

  test("swapping two tabs takes one", async () => {
    const swap: Edit[] = [{ kind: "rename-sheet", sheet: "Tab 1", name: "Tab 1 before 2" }, { kind: "rename-sheet", sheet: "Sheet1", name: "Tab 1" }, { kind: "hide-sheet", sheet: "Tab 1 before 2" }];
    expect(await counted(({ port }) => port.apply(swap))).toBe(1);
  });

  test("scattered cells cost what they are, not the block they come in, and formats are asked for in answers under 2 MB", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Sheet1", values: [["x"]] }], calculate: () => 7 });
    const far = Array.from({ length: 30_000 }, (_, row) => Array.from({ length: 26 }, (__, column): Cell | null => (row % 29_999 === 0 && column === 25 ? { formula: "=1" } : null)));
    expect(await counted(({ port }) => port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: far }]), book)).toBe(2);
    expect([0, 1, 29_999].map((row) => book.sheet("Sheet1").formula(row, 25))).toEqual(["=1", null, "=1"]);
    expect(Math.max(...book.exchanges().map(({ bytes, answerBytes }) => bytes + answerBytes))).toBeLessThan(5_000);
    const full = Array.from({ length: 12_000 }, (_, row) => Array.from({ length: 26 }, (__, column): Cell => ({ value: row * column })));
    await book.port.apply([{ kind: "write", sheet: "Sheet1", row: 40_000, column: 0, cells: full }]);
    expect(book.value("Sheet1", 51_999, 25)).toBe(11_999 * 25);
    expect(Math.max(...book.exchanges().map(({ answerBytes }) => answerBytes))).toBeLessThan(2_000_000);
  });

  test("nothing to do takes none", async () => {
    expect(await counted(async ({ port }) => { await port.apply([]); await port.spillAreas([]); })).toBe(0);
  });

  test("what is over the host's 5 MB goes in several requests, whole", async () => {
    const book = hostWorkbook();
    const long = "x".repeat(30_000);
    const rows = Array.from({ length: 500 }, (_, row) => [{ value: `${row} ${long}` }]);
    expect(await counted(({ port }) => port.apply([add("Long", rows)]), book)).toBeGreaterThanOrEqual(4);
    expect(book.value("Long", 499, 0)).toBe(`499 ${long}`);
    expect(await counted(({ port }) => port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: rows }]), book)).toBeGreaterThanOrEqual(4);
    expect(book.value("Sheet1", 499, 0)).toBe(`499 ${long}`);
  });
});

describe("a failure on the way", () => {
  const three = { sheets: [{ name: "Plan", values: [["a", 1]] }, { name: "Tab 1", values: [["typed"]] }] };

  test.each([
    [1, 0],
    [1, "all"],
    [2, 0],
    [2, 3],
    [2, "half"],
    [2, "all"],
  ] as const)("at sync %i after %s operations leaves every other sheet whole and no half sheet", async (sync, after) => {
    const book = hostWorkbook(three);
    book.failAt({ sync, after });
    await expect(book.port.apply([tab(50)])).rejects.toThrow(Problem);
    expect(book.sheetNames()).toEqual(sync === 2 && after === "all" ? ["Plan", "Tab 1", "Tab"] : ["Plan", "Tab 1"]);
    expect([book.value("Plan", 0, 0), book.value("Plan", 0, 1), book.value("Tab 1", 0, 0)]).toEqual(["a", 1, "typed"]);
  });

  test("that cannot be cleared away at once is cleared by the next build, and never bears the name of a whole sheet", async () => {
    const book = hostWorkbook(three);
    book.failAt({ sync: 2, after: "half" });
    book.failAt({ sync: 3 });
    await expect(book.port.apply([tab(50)])).rejects.toThrow(Problem);
    expect(book.sheetNames()).toEqual(["Plan", "Tab 1", unfinishedName]);
    await book.port.apply([tab(50)]);
    expect(book.sheetNames()).toEqual(["Plan", "Tab 1", "Tab"]);
  });

  test("between two requests of one sheet clears the sheet away", async () => {
    const book = hostWorkbook(three);
    book.failAt({ sync: 4, code: "ServiceNotAvailable" });
    await expect(book.port.apply([add("Long", Array.from({ length: 500 }, () => [{ value: "x".repeat(30_000) }]))])).rejects.toThrow("does not answer");
    expect(book.sheetNames()).toEqual(["Plan", "Tab 1"]);
  });

  test("a colleague who renames a sheet between the two syncs of a read does not spoil it", async () => {
    const book = hostWorkbook(three);
    book.before(2, () => { book.sheet("Tab 1").name = "Elsewhere"; });
    const { sheets } = await book.port.read();
    expect(sheets.map(({ name }) => name)).toEqual(["Plan", "Tab 1"]);
  });

  test("a colleague who takes the name between looking and writing makes it a refusal, not an overwrite", async () => {
    const book = hostWorkbook(three);
    book.before(2, () => { book.sheet("Plan").name = "Tab"; });
    await expect(book.port.apply([tab(5)])).rejects.toThrow("of that name already");
    expect(book.sheetNames()).toEqual(["Tab", "Tab 1"]);
    expect(book.value("Tab", 0, 0)).toBe("a");
  });

  test.each([
    ["InvalidOperationInCellEditMode", "Press Enter or Esc"],
    ["AccessDenied", "protected"],
    ["ItemNotFound", "gone"],
    ["InactiveWorkbook", "Another workbook is in front"],
    ["RequestPayloadSizeLimitExceeded", "too much to write"],
    ["NeverHeardOf", "(NeverHeardOf)"],
  ])("with code %s is a problem whose sentence says %s", async (code, words) => {
    const book = hostWorkbook(three);
    for (const work of [() => book.port.read(), () => book.port.apply([tab(1)]), () => book.port.selection(), () => book.port.spillAreas([{ sheet: "Plan", row: 0, column: 0 }])]) {
      book.failAt({ sync: 1, code });
      const thrown: unknown = await work().then(() => null, (reason: unknown) => reason);
      expect(thrown).toBeInstanceOf(Problem);
      expect((thrown as Problem).sentence).toContain(words);
      expect((thrown as Problem).sentence.length).toBeLessThanOrEqual(160);
    }
  });

});

describe.each(builds)("misuse of the vendor's client for %s is a defect of ours that shows", (build) => {
  const { host, syncs } = hostWorkbook({ build });
  const sheetOf = ({ workbook }: Excel.RequestContext) => workbook.worksheets.getItem("Sheet1");

  test.each([
    ["setting a property whose name is misspelt", "no property called visiblity", (context: Excel.RequestContext) => Promise.resolve(Object.assign(sheetOf(context), { visiblity: "Hidden" }))],
    ["reading one whose name is misspelt", "no member called nmae", (context: Excel.RequestContext) => Promise.resolve(Reflect.get(sheetOf(context), "nmae"))],
    ["writing to a property that can only be read", "no property called id that can be set", (context: Excel.RequestContext) => Promise.resolve(Object.assign(sheetOf(context), { id: "1" }))],
    ["reading a property that was not loaded", "The property 'name' is not available", (context: Excel.RequestContext) => Promise.resolve(sheetOf(context).name)],
    ["reading an answer before the request was sent", "value of the result object has not been loaded", (context: Excel.RequestContext) => Promise.resolve(sheetOf(context).charts.getCount().value)],
  ])("%s", async (_title, words, misuse: (context: Excel.RequestContext) => Promise<unknown>) => {
    const thrown: unknown = await host.run(misuse).then(() => null, hostProblem);
    expect(thrown).toBeInstanceOf(Error);
    expect(thrown).not.toBeInstanceOf(Problem);
    expect((thrown as Error).message).toContain(words);
    expect(syncs()).toBe(0);
  });
});

describe("a protected sheet", () => {
  const locked = { sheets: [{ name: "Open" }, { name: "Locked", protected: true, values: [["kept"]] }] };

  test("refuses a list before its first edit, and says how to go on", async () => {
    const book = hostWorkbook(locked);
    const edits: Edit[] = ["Open", "Locked"].map((sheet) => ({ kind: "write", sheet, row: 0, column: 0, cells: [[{ value: 1 }]] }));
    await expect(book.port.apply(edits)).rejects.toThrow('Sheet "Locked" is protected. Unprotect it under Review');
    expect(book.value("Open", 0, 0)).toBeNull();
    expect(book.value("Locked", 0, 0)).toBe("kept");
  });

  test("is known from reading", async () => {
    expect((await hostWorkbook(locked).port.read()).sheets.map((one) => one.protected)).toEqual([false, true]);
  });
});

describe("looks", () => {
  test("every setting of a plan reaches the sheet, once an area", async () => {
    const book = hostWorkbook();
    await book.port.apply([add("Tab", [[{ value: "Head", style: "head" }, { value: "Head 2", style: "head" }], [{ value: "x" }, { value: 2, style: "input" }]], everySetting)]);
    const sheet = book.sheet("Tab");
    const settings = sheet.settings.map(({ address, property, value }) => `${address} ${property} ${JSON.stringify(value)}`);
    for (const expected of [
      'A1:B1 format.font.bold true',
      'A1:B1 format.fill.color "#1f4e5f"',
      'A1:B1 format.borders.InsideVertical.style "Continuous"',
      'B2 format.protection.locked false',
      'A1:B1 format.columnWidth 66.75',
      'A1 format.rowHeight 24',
      'F1:F1048576 columnHidden true',
      ' freezeAt {"row":0,"column":0,"rows":1,"columns":1}',
      'A2:A6 dataValidation.rule {"list":{"inCellDropDown":true,"source":"yes,no"}}',
      'B2:B6 dataValidation.rule {"decimal":{"formula1":0,"formula2":1000000000000000,"operator":"Between"}}',
      ' pageLayout.orientation "Landscape"',
      ' pageLayout.paperSize "A4"',
      ' pageLayout.printMargins {"unit":"Centimeters","margins":{"left":0.8,"right":0.5,"top":2.15,"bottom":1.85,"header":1,"footer":0.8}}',
      ' pageLayout.zoom {"scale":100}',
      ' pageLayout.printTitleRows "$1:$1"',
      ' pageLayout.headersFooters.defaultForAllPages.centerFooter "Page &P of &N"',
      ' pageBreak "A3"',
      ' tabColor "#1f4e5f"',
    ]) expect(settings).toContain(expected);
    expect(sheet.merges).toEqual([{ row: 3, column: 0, rows: 1, columns: 2 }]);
    expect(sheet.conditionalFormats.map(({ area, settings: set }) => [area, Object.fromEntries(set)])).toEqual([
      [{ row: 1, column: 1, rows: 5, columns: 1 }, { "rule.formula": "=$B2>1", "format.fill.color": "#fff2cc", "format.font.color": "#7f6000", "format.font.bold": true, "format.font.italic": true }],
    ]);
    expect(settings.filter((one) => one.startsWith("A1:B1 format.font.bold"))).toHaveLength(1);
    expect([sheet.format(0, 0), sheet.format(1, 1), sheet.format(1, 0)]).toEqual(["@", "0.00", "@"]);
  });

  test("a choice that holds a comma, and choices over the host's 255 characters, are refused", async () => {
    const list = (items: string[]): Partial<SheetPlan> => ({ validations: [{ area: { row: 0, column: 0, rows: 1, columns: 1 }, rule: { kind: "list", items }, message: "", strict: true }] });
    const { port, sheetNames } = hostWorkbook();
    await expect(port.apply([add("Tab", [[{}]], list(["a,b"]))])).rejects.toThrow("comma");
    await expect(port.apply([add("Tab", [[{}]], list(["x".repeat(200), "y".repeat(100)]))])).rejects.toThrow("301");
    expect(sheetNames()).toEqual(["Sheet1"]);
  });

  test("writing keeps the number formats of cells, text apart", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Plan", values: [[1, 2, 3]] }] });
    for (const column of [0, 1, 2]) book.sheet("Plan").setFormat(0, column, "0.00");
    await book.port.apply([{ kind: "write", sheet: "Plan", row: 0, column: 0, cells: [[{ value: 5 }, { value: "1-2" }, { formula: "=6*7" }]] }]);
    expect([0, 1, 2].map((column) => book.sheet("Plan").format(0, column))).toEqual(["0.00", "@", "0.00"]);
  });
});

describe("watching", () => {
  const watched = async () => {
    const book = hostWorkbook({ sheets: [{ name: "Plan" }] });
    let heard = 0;
    const stop = await book.port.watch(() => (heard += 1));
    const hears = async (work: () => unknown) => {
      heard = 0;
      await work();
      await settled();
      return heard;
    };
    return { book, stop, hears };
  };

  test("hears of what is typed here and elsewhere, and of sheets added and deleted", async () => {
    const { book, hears } = await watched();
    expect(await hears(() => { book.type("Plan", 0, 0, "here"); })).toBe(1);
    expect(await hears(() => { book.type("Plan", 0, 0, "there", "remote"); })).toBe(1);
    expect(await hears(() => book.port.apply([add("Tab", [])]))).toBe(1);
    expect(await hears(() => book.port.apply([{ kind: "delete-sheet", sheet: "Tab" }]))).toBe(1);
  });

  test("costs no request, whoever made the change", async () => {
    const { book, hears } = await watched();
    const before = book.syncs();
    for (const source of ["local", "remote"] as const) await hears(() => { book.type("Plan", 0, 0, "x", source); });
    expect(book.syncs()).toBe(before);
  });

  test("that begins while a cell is being edited waits for Enter, and hears of what follows", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Plan" }] });
    const enter = book.editCell();
    let heard = 0;
    const watching = book.port.watch(() => (heard += 1));
    await settled();
    enter();
    await watching;
    book.type("Plan", 0, 0, "typed");
    await settled();
    expect(heard).toBe(1);
  });
});

function settled(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 20));
}
