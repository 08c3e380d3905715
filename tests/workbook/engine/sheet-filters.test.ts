import { ICommandService, IUniverInstanceService } from "@univerjs/core";
import { strFromU8, unzipSync } from "fflate";
import type { Area } from "../../../src/sheet";
import { bootEngine } from "../../../src/headless/open-headless";
import type { FilterCondition } from "../../../src/workbook/document/workbook-document";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

let live: LiveWorkbook;
let commands: ICommandService;
let port: ReturnType<typeof createBrowserPort>;

const cell = (at: string, value: string | number) => (typeof value === "number" ? `<c r="${at}"><v>${value}</v></c>` : `<c r="${at}" t="str"><v>${value}</v></c>`);
const line = (row: number, values: readonly (string | number)[], more = "") => `<row r="${row}"${more}>${values.map((value, column) => cell(`${"ABCDE"[column]!}${row}`, value)).join("")}</row>`;
const rows = [["Part", "Kind", "Count"], ["rail", "metal", 4], ["drive", "disk", 12], ["sled", "metal", 7], ["cable", "wire", 30]];
const data = (hidden: readonly number[] = []) => `<sheetData>${rows.map((values, at) => line(at + 1, values, hidden.includes(at + 1) ? ' hidden="1"' : "")).join("")}</sheetData>`;
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const table =
  '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Stock" displayName="Stock" ref="A1:C5"><autoFilter ref="A1:C5"><filterColumn colId="1"><filters>' +
  '<filter val="metal"/></filters></filterColumn></autoFilter><tableColumns count="3"><tableColumn id="1" name="Part"/><tableColumn id="2" name="Kind"/>' +
  '<tableColumn id="3" name="Count"/></tableColumns></table>';
const plain = rawWorkbook({ sheets: { One: data() } });
/** A table that shows metal alone. */
const filtered = rawWorkbook({
  sheets: { One: `${data([3, 5])}<tableParts count="1"><tablePart r:id="t"/></tableParts>` },
  parts: { "xl/tables/table1.xml": table, "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="t" Type="${office}/table" Target="../tables/table1.xml"/></Relationships>` },
});

function open(file: Uint8Array): void {
  const univer = bootEngine(readWorkbook(file));
  live = new LiveWorkbook(univer);
  port = createBrowserPort(univer, live);
  commands = univer.__getInjector().get(ICommandService);
  univer.__getInjector().get(IUniverInstanceService).focusUnit(live.workbook.getUnitId());
}

afterEach(() => {
  live.dispose();
});

const sheet = () => live.workbook.getActiveSheet();
const list = (...texts: string[]): FilterCondition => ({ kind: "list", texts, blank: false });
const first = () => live.filters.of(sheet())[0]!;
const set = (column: number, condition: FilterCondition | undefined) => {
  live.filters.set(sheet(), { ...first(), column }, condition);
};
/** The first texts of the rows that are in sight. */
const shown = () => Array.from({ length: 8 }, (_, row) => row).flatMap((row) => (sheet().getRowVisible(row) ? [String(sheet().getCellRaw(row, 0)?.v ?? "")] : [])).filter((text) => text !== "");
const run = async (id: string, params: object = {}) => {
  await commands.executeCommand(id, { unitId: live.workbook.getUnitId(), subUnitId: sheet().getSheetId(), ...params });
  await new Promise((resolve) => setTimeout(resolve, 0));
};
const range = ({ row, column, rows: down, columns }: Area) => ({ startRow: row, endRow: row + down - 1, startColumn: column, endColumn: column + columns - 1 });
const wholeRows = (row: number, count: number) => ({ range: { ...range({ row, column: 0, rows: count, columns: 1 }), endColumn: sheet().getColumnCount() - 1 } });
const wholeColumns = (column: number) => ({ range: { ...range({ row: 0, column, rows: 1, columns: 1 }), endRow: sheet().getRowCount() - 1 } });
const saved = (file: Uint8Array) => readFile(writeWorkbook(live.store(), file).bytes).document.sheets[0]!;
const area = { row: 0, column: 0, rows: 5, columns: 3 };

test("arrows, a list, a comparison and a cleared filter are each one step back", async () => {
  open(plain);
  live.filters.add(sheet(), { area, columns: [] });
  expect(live.filters.arrowAt(sheet(), { row: 0, column: 2 })).toMatchObject({ area, column: 2 });
  expect(live.filters.arrowAt(sheet(), { row: 0, column: 3 })).toBeNull();
  set(1, list("Metal"));
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 4, shown: 2, otherwise: 0 });
  set(2, { kind: "compare", joins: true, comparisons: [{ operator: "greaterThan", value: "5" }] });
  expect(shown()).toEqual(["Part", "sled"]);
  expect(live.filters.shownInColumn(sheet(), { ...first(), column: 1 }).map(({ text }) => text)).toEqual(["disk", "metal", "wire"]);
  live.filters.clear(sheet(), first());
  expect(shown()).toHaveLength(5);
  await run("univer.command.undo");
  expect(shown()).toEqual(["Part", "sled"]);
  for (let steps = 0; steps < 3; steps += 1) await run("univer.command.undo");
  expect([shown().length, live.filters.of(sheet())]).toEqual([5, []]);
  for (let steps = 0; steps < 3; steps += 1) await run("univer.command.redo");
  expect(shown()).toEqual(["Part", "sled"]);
  live.filters.remove(sheet(), first());
  expect([shown().length, live.filters.of(sheet())]).toEqual([5, []]);
});

test("the filter of a table in a file is in force when it is opened, is read whole by the plan, and saved with what came since", async () => {
  open(filtered);
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  expect((await port.read()).sheets[0]!.values.map(([part]) => part)).toEqual(["Part", "rail", "drive", "sled", "cable"]);
  // What is written by the pane into a row that is out of sight goes into that row, which stays where it is.
  await port.apply([{ kind: "write", sheet: "One", row: 2, column: 0, cells: [[{ value: "drive 2" }, { value: "metal" }]] }]);
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  live.filters.applyAgain(sheet(), first());
  expect(shown()).toEqual(["Part", "rail", "drive 2", "sled"]);
  const { filters, rows: settings, cells } = saved(filtered);
  expect([filters, settings, cells.get(2)!.get(0)!.value]).toEqual([
    [{ table: "Stock", columns: [{ column: 1, hidesArrow: undefined, condition: list("metal") }] }], [{ first: 4, last: 4, hidden: true }], "drive 2",
  ]);
});

test("what is filtered is no change of the plan to whoever watches it", async () => {
  open(filtered);
  let told = 0;
  const stop = await port.watch(() => (told += 1));
  set(1, list("wire"));
  expect([shown(), told]).toEqual([["Part", "cable"], 0]);
  await port.apply([{ kind: "write", sheet: "One", row: 1, column: 0, cells: [[{ value: "bar" }]] }]);
  expect(told).toBeGreaterThan(0);
  stop();
});

test("whoever is led to a row out of sight sees it, and the others stay where they are", async () => {
  const goTo = (row: number, down: number) => port.apply([{ kind: "select", sheet: "One", area: { row, column: 0, rows: down, columns: 1 } }]);
  open(filtered);
  await goTo(1, 4);
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  await goTo(2, 1);
  expect(shown()).toEqual(["Part", "rail", "drive", "sled"]);
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 4, shown: 3, otherwise: 1 });
  expect(saved(filtered).rows.map(({ first: row }) => row)).toEqual([4]);
  live.filters.applyAgain(sheet(), first());
  expect(shown()).toEqual(["Part", "rail", "sled"]);
});

test("rows that were changed since are counted, in sight or not, and those of which an unknown condition decides are not", async () => {
  open(filtered);
  await port.apply([{ kind: "write", sheet: "One", row: 1, column: 1, cells: [[{ value: "wood" }], [{ value: "metal" }]] }]);
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 4, shown: 2, otherwise: 2 });
  live.dispose();
  open(rawWorkbook({ sheets: { One: `${data([3, 5])}<autoFilter ref="A1:C5"><filterColumn colId="1"><colorFilter dxfId="0"/></filterColumn></autoFilter>` } }));
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 4, shown: 2, otherwise: 0 });
});

describe("rows that are out of sight are left alone", () => {
  const values = () => Array.from({ length: 5 }, (_, row) => sheet().getCellRaw(row, 2)?.v ?? null);

  test("by emptying cells over them", async () => {
    open(filtered);
    await run("sheet.command.clear-selection-content", { ranges: [range({ row: 1, column: 2, rows: 4, columns: 1 })] });
    expect(values()).toEqual(["Count", null, 12, null, 30]);
  });

  test("by deleting rows over them, which come back as they were", async () => {
    open(filtered);
    await run("sheet.command.remove-row-by-range", wholeRows(1, 3));
    expect([shown(), sheet().getCellRaw(1, 0)?.v, sheet().getCellRaw(2, 0)?.v]).toEqual([["Part"], "drive", "cable"]);
    expect(saved(filtered).tables[0]!.area.rows).toBe(3);
    await run("univer.command.undo");
    expect([shown(), values()]).toEqual([["Part", "rail", "sled"], ["Count", 4, 12, 7, 30]]);
    expect([first().area.rows, first().filter.columns.length]).toEqual([5, 1]);
  });

  test("by filling down over them", async () => {
    open(filtered);
    await run("sheet.command.auto-fill", { sourceRange: range({ row: 1, column: 2, rows: 1, columns: 1 }), targetRange: range({ row: 2, column: 2, rows: 3, columns: 1 }), applyType: "COPY" });
    expect(values()).toEqual(["Count", 4, 12, 4, 30]);
  });

  test("by a sum of what is shown, while a plain sum counts them", async () => {
    open(filtered);
    await port.apply([{ kind: "write", sheet: "One", row: 8, column: 0, cells: [[{ formula: "=SUBTOTAL(109,C2:C5)" }, { formula: "=SUM(C2:C5)" }]] }]);
    await live.settle();
    const sums = () => [sheet().getCellRaw(8, 0)?.v, sheet().getCellRaw(8, 1)?.v];
    expect(sums()).toEqual([11, 53]);
    set(1, undefined);
    await live.settle();
    expect(sums()).toEqual([53, 53]);
  });
});

test("rows that come in are shown, those below stay out of sight, and the file has the same rows", async () => {
  open(filtered);
  await run("sheet.command.insert-row-by-range", wholeRows(2, 1));
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  expect([2, 3, 4, 5].map((row) => sheet().getRowVisible(row))).toEqual([true, false, true, false]);
  expect(saved(filtered).rows.map(({ first: row }) => row)).toEqual([3, 5]);
  expect(saved(filtered).filters![0]!.columns).toHaveLength(1);
});

test("a column that goes takes its condition along, its rows are shown, and both come back with it", async () => {
  open(filtered);
  await run("sheet.command.remove-col-by-range", wholeColumns(1));
  expect([shown().length, first().filter.columns]).toEqual([5, []]);
  expect([saved(filtered).filters, saved(filtered).rows]).toEqual([[{ table: "Stock", columns: [] }], []]);
  await run("univer.command.undo");
  expect([shown(), first().filter.columns.length, sheet().getCellRaw(1, 1)?.v]).toEqual([["Part", "rail", "sled"], 1, "metal"]);
  await run("univer.command.redo");
  expect([shown().length, first().filter.columns]).toEqual([5, []]);
});

test("a column that comes in before the condition moves it, in the file too", async () => {
  open(filtered);
  await run("sheet.command.insert-col-by-range", wholeColumns(1));
  expect(first().filter.columns).toMatchObject([{ column: 2 }]);
  expect(saved(filtered).filters![0]!.columns).toMatchObject([{ column: 2, condition: list("metal") }]);
});

test("a list that went on below the sheet's own filter belongs to it once it is applied again", async () => {
  open(plain);
  live.filters.add(sheet(), { area, columns: [] });
  set(1, list("metal"));
  await port.apply([{ kind: "write", sheet: "One", row: 5, column: 0, cells: [[{ value: "screw" }, { value: "wood" }]] }]);
  expect(shown()).toContain("screw");
  live.filters.applyAgain(sheet(), first());
  expect([shown(), first().area.rows]).toEqual([["Part", "rail", "sled"], 6]);
  expect(saved(plain).filters).toMatchObject([{ area: { row: 0, column: 0, rows: 6, columns: 3 } }]);
});

test("under a condition that is not known here no row comes back into sight, and it stays", () => {
  const kept = rawWorkbook({ sheets: { One: `${data([3, 5])}<autoFilter ref="A1:C5"><filterColumn colId="1"><colorFilter dxfId="0"/></filterColumn></autoFilter>` } });
  open(kept);
  set(2, { kind: "compare", joins: true, comparisons: [{ operator: "greaterThan", value: "5" }] });
  expect(shown()).toEqual(["Part", "sled"]);
  expect(saved(kept).filters![0]!.columns[0]).toMatchObject({ column: 1, condition: { kind: "other", xml: '<colorFilter dxfId="0"/>' } });
  live.filters.clear(sheet(), first());
  expect(shown()).toHaveLength(5);
});

test.each([
  ["a whole sheet", "A1:XFD1048576"], ["cells past the last one", "B900:C1000"], ["one cell", "A1"], ["columns alone", "A:C"],
])("a filter over %s is opened, set, cleared and saved", (_what, ref) => {
  const odd = rawWorkbook({ sheets: { One: `${data()}<autoFilter ref="${ref}"/>` } });
  open(odd);
  set(0, list("rail"));
  live.filters.clear(sheet(), first());
  expect(shown()).toHaveLength(5);
  expect(saved(odd).filters).toHaveLength(1);
});

test("a filter over 10,000 rows is applied within two seconds, and a filter over merged headers or an empty sheet does no harm", () => {
  const many = Array.from({ length: 10_000 }, (_, at) => line(at + 1, [`part ${at}`, at % 7, at])).join("");
  const file = rawWorkbook({ sheets: { One: `<sheetData>${many}</sheetData><autoFilter ref="A1:C10000"/><mergeCells><mergeCell ref="A1:B1"/></mergeCells>` } });
  open(file);
  const start = performance.now();
  set(1, list("3"));
  expect(performance.now() - start).toBeLessThan(2_000);
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 9_999, shown: 1_429, otherwise: 0 });
  live.dispose();
  open(rawWorkbook({ sheets: { One: '<sheetData/><autoFilter ref="A1:C1"/>' } }));
  set(0, list("x"));
  expect(live.filters.count(sheet(), first())).toEqual({ rows: 0, shown: 0, otherwise: 0 });
});

test("a sheet that is renamed keeps its filter under its new name, and one that is removed takes its name for programs along", async () => {
  const two = rawWorkbook({
    sheets: { One: `${data([3, 5])}<autoFilter ref="A1:C5"><filterColumn colId="1"><filters><filter val="metal"/></filters></filterColumn></autoFilter>`, Two: data() },
    behind: '<definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">One!$A$1:$C$5</definedName></definedNames>',
  });
  const names = () => /<definedNames>.*<\/definedNames>/.exec(strFromU8(unzipSync(writeWorkbook(live.store(), two).bytes)["xl/workbook.xml"]!))?.[0];
  open(two);
  await run("sheet.command.set-worksheet-name", { name: "New name" });
  expect(shown()).toEqual(["Part", "rail", "sled"]);
  expect(names()).toContain("'New name'!$A$1:$C$5");
  await run("sheet.command.insert-row-by-range", wholeRows(1, 1));
  expect(names()).toContain("'New name'!$A$1:$C$6");
  await run("sheet.command.remove-sheet");
  expect(names()).toBeUndefined();
  await run("univer.command.undo");
  const [back] = live.workbook.getSheets();
  expect([live.filters.of(back!)[0]!.area.rows, back!.getRowVisible(2), back!.getRowVisible(3)]).toEqual([6, true, false]);
});

test("a copy of a filtered sheet is filtered as it is, and either is changed alone", async () => {
  const own = rawWorkbook({ sheets: { One: data() } });
  open(own);
  live.filters.add(sheet(), { area, columns: [] });
  set(1, list("metal"));
  await run("sheet.command.copy-sheet");
  const [first_, copy] = live.workbook.getSheets();
  expect(live.filters.of(copy!)[0]!.filter.columns).toHaveLength(1);
  live.filters.clear(copy!, ...live.filters.of(copy!));
  expect([first_!.getRowVisible(2), copy!.getRowVisible(2), live.filters.of(first_!)[0]!.filter.columns.length]).toEqual([false, true, 1]);
  expect(readFile(writeWorkbook(live.store(), own).bytes).document.sheets.map(({ filters }) => filters![0]!.columns.length)).toEqual([1, 0]);
});

test("a copy of a sheet with a filtered table has a table of another name, in the file too, and formulas go on reading the first", async () => {
  open(filtered);
  await port.apply([{ kind: "write", sheet: "One", row: 8, column: 0, cells: [[{ formula: "=SUM(Stock[Count])" }]] }]);
  await live.settle();
  await run("sheet.command.copy-sheet");
  await port.apply([{ kind: "write", sheet: "One", row: 1, column: 2, cells: [[{ value: 1000 }]] }]);
  await live.settle();
  const [one] = live.workbook.getSheets();
  expect(one!.getCellRaw(8, 0)?.v).toBe(1049);
  await run("univer.command.undo");
  await run("univer.command.undo");
  await run("univer.command.redo");
  const sheets = readFile(writeWorkbook(live.store(), filtered).bytes).document.sheets;
  expect(sheets.map(({ tables, filters }) => [tables[0]!.name, filters![0]!.table, filters![0]!.columns.length])).toEqual([["Stock", "Stock", 1], ["Stock_2", "Stock_2", 1]]);
});

test("two filters on one sheet, of a table and of its own, keep their rows out of sight each for itself", () => {
  const both = rawWorkbook({
    sheets: {
      One: `<sheetData>${rows.map((values, at) => line(at + 1, values)).join("")}${rows.map((values, at) => line(at + 8, values)).join("")}</sheetData>` +
        '<autoFilter ref="A8:C12"/><tableParts count="1"><tablePart r:id="t"/></tableParts>',
    },
    parts: { "xl/tables/table1.xml": table, "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="t" Type="${office}/table" Target="../tables/table1.xml"/></Relationships>` },
  });
  open(both);
  const out = () => Array.from({ length: 12 }, (_, row) => row + 1).filter((row) => sheet().getRowFiltered(row - 1));
  const [own, ofTable] = live.filters.of(sheet());
  live.filters.set(sheet(), { ...own!, column: 1 }, list("wire"));
  live.filters.applyAgain(sheet(), ofTable!);
  expect(out()).toEqual([3, 5, 9, 10, 11]);
  live.filters.clear(sheet(), ...live.filters.of(sheet()));
  expect(out()).toEqual([]);
});
