import { ICommandService, IUniverInstanceService, UniverInstanceType, type Workbook } from "@univerjs/core";
import { SetSuperTableMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService } from "@univerjs/sheets-formula";
import { strFromU8, unzipSync } from "fflate";
import { bootEngine, openHeadless, type HeadlessWorkbook } from "../../../src/headless/open-headless";
import type { Cell } from "../../../src/sheet";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { rawWorkbook } from "../../support/raw-workbook";

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const drives = (count: number): Cell[] => [{ value: `Array ${count}` }, { value: count }];
const plan = {
  name: "Arrays",
  rows: [[{ value: "Array" }, { value: "Drives" }], drives(12), drives(24)],
  styles: {}, columnWidths: [],
  tables: [{ name: "Arrays", area: { row: 0, column: 0, rows: 3, columns: 2 } }],
};
const sums = { name: "Sums", rows: [[{ formula: "=SUM(Arrays[Drives])" }, { formula: '=IFERROR(SUM(arrays[DRIVES sold]),"none")' }, { formula: "=ROWS(Arrays)" }]], styles: {}, columnWidths: [] };

/** A file with a table of two parts and a row of totals. */
function stockFile(): Uint8Array {
  const cell = (place: string, formula: string) => `<c r="${place}"><f>${formula}</f></c>`;
  const text = (place: string, value: string) => `<c r="${place}" t="inlineStr"><is><t>${value}</t></is></c>`;
  const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;
  return rawWorkbook({
    sheets: {
      Stock: `<sheetData>${[
        row(1, text("A1", "Part"), text("B1", "Held")),
        row(2, text("A2", "Drive"), '<c r="B2"><v>3</v></c>'),
        row(3, text("A3", "Cable"), '<c r="B3"><v>4</v></c>'),
        row(4, cell("B4", "SUBTOTAL(109,Stock[Held])")),
        row(6, cell("A6", "SUM(Stock[Held])"), cell("B6", "Stock[[#Totals],[Held]]"), cell("C6", "ROWS(Stock[#All])")),
      ].join("")}</sheetData><tableParts count="1"><tablePart r:id="t1"/></tableParts>`,
    },
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels":
        `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="t1" Type="${office}/table" Target="../tables/table1.xml"/></Relationships>`,
      "xl/tables/table1.xml":
        '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Stock" displayName="Stock" ref="A1:B4" totalsRowCount="1">' +
        '<tableColumns count="2"><tableColumn id="1" name="Part"/><tableColumn id="2" name="Held"/></tableColumns></table>',
    },
  });
}

async function withSums(run: (workbook: HeadlessWorkbook, shown: () => Promise<unknown>) => Promise<void>): Promise<void> {
  const workbook = await openHeadless();
  try {
    await workbook.port.apply([{ kind: "add-sheet", plan: sums }, { kind: "add-sheet", plan }]);
    await run(workbook, async () => (await workbook.port.read(["Sums"])).sheets.find(({ name }) => name === "Sums")!.values[0]);
  } finally {
    workbook.dispose();
  }
}

describe("formulas that speak of tables", () => {
  test("see them though they came before them, and see no column that they do not have", () =>
    withSums(async (_, shown) => {
      expect(await shown()).toEqual([36, "none", 2]);
    }));

  test("follow cells, rows that are added and headers that change", () =>
    withSums(async ({ port }, shown) => {
      await port.apply([{ kind: "write", sheet: "Arrays", row: 1, column: 1, cells: [[{ value: 10 }]] }]);
      expect(await shown()).toEqual([34, "none", 2]);
      await port.apply([
        { kind: "resize-table", sheet: "Arrays", table: "Arrays", area: { row: 0, column: 0, rows: 4, columns: 2 } },
        { kind: "write", sheet: "Arrays", row: 3, column: 0, cells: [drives(36)] },
      ]);
      expect(await shown()).toEqual([70, "none", 3]);
      await port.apply([{ kind: "write", sheet: "Arrays", row: 0, column: 1, cells: [[{ value: "Drives sold" }]] }]);
      expect(await shown()).toEqual([{ error: "#REF!" }, 70, 3]);
    }));

  test("follow a sheet that is renamed", () =>
    withSums(async ({ port }, shown) => {
      await port.apply([{ kind: "rename-sheet", sheet: "Arrays", name: "All arrays" }, { kind: "write", sheet: "All arrays", row: 1, column: 1, cells: [[{ value: 1 }]] }]);
      expect(await shown()).toEqual([25, "none", 2]);
    }));

  test("count no row of totals as data, whoever wrote the file", async () => {
    const workbook = await openHeadless(stockFile());
    try {
      expect((await workbook.port.read(["Stock"])).sheets[0]!.values[5]).toEqual([7, 7, 4]);
    } finally {
      workbook.dispose();
    }
  });
});

test("a row of totals stays the end of its table whatever is typed below it, and goes without leaving data for totals", async () => {
  const univer = bootEngine(readWorkbook(stockFile()));
  const live = new LiveWorkbook(univer);
  const port = createBrowserPort(univer, live);
  const run = (command: string, params: object) =>
    univer.__getInjector().get(ICommandService).executeCommand(command, { unitId: live.workbook.getUnitId(), subUnitId: live.workbook.getActiveSheet().getSheetId(), ...params });
  const shown = async (row: number) => (await port.read(["Stock"])).sheets[0]!.values[row];
  try {
    await live.settle();
    await run("sheet.command.set-range-values", { range: { startRow: 4, endRow: 4, startColumn: 0, endColumn: 1 }, value: [[{ v: "Counted" }, { v: 1000 }]] });
    expect([await shown(4), await shown(5)]).toEqual([["Counted", 1000, null], [7, 7, 4]]);
    await run("sheet.command.remove-row", { range: { startRow: 3, endRow: 3, startColumn: 0, endColumn: 19 } });
    expect(await shown(4)).toEqual([7, { error: "#REF!" }, 3]);
    const table = strFromU8(unzipSync(writeWorkbook(live.store(), stockFile()).bytes)["xl/tables/table1.xml"]!);
    expect(table).toContain('ref="A1:B3"');
    expect(table).not.toContain("totalsRowCount");
  } finally {
    live.dispose();
  }
});

test("where a table was whose rows are gone, nothing is read for it any more", async () => {
  const univer = bootEngine(readWorkbook(stockFile()));
  const live = new LiveWorkbook(univer);
  const port = createBrowserPort(univer, live);
  const where = { unitId: live.workbook.getUnitId(), subUnitId: live.workbook.getActiveSheet().getSheetId() };
  try {
    await live.settle();
    await univer.__getInjector().get(ICommandService).executeCommand("sheet.command.remove-row", { ...where, range: { startRow: 0, endRow: 3, startColumn: 0, endColumn: 19 } });
    expect((await port.read(["Stock"])).sheets[0]!.values[1]).toEqual([{ error: "#NAME?" }, { error: "#NAME?" }, { error: "#NAME?" }]);
  } finally {
    live.dispose();
  }
});

test("a balance that each row carries on from the one above comes out row by row", async () => {
  const row = (number: number): Cell[] => [{ value: number }, { formula: "=Carry[[#This Row],[Start]]+Carry[[#This Row],[In]]" }, number === 1 ? { value: 0 } : { formula: `=B${number}` }];
  const carry = {
    name: "Carry", rows: [[{ value: "In" }, { value: "Balance" }, { value: "Start" }], ...[1, 2, 3, 4, 5].map(row)], styles: {}, columnWidths: [],
    tables: [{ name: "Carry", area: { row: 0, column: 0, rows: 6, columns: 3 } }],
  };
  const { port, dispose } = await openHeadless();
  try {
    await port.apply([{ kind: "add-sheet", plan: carry }]);
    const balance = async () => (await port.read(["Carry"])).sheets.find(({ name }) => name === "Carry")!.values.slice(1).map((line) => line[1]);
    expect(await balance()).toEqual([1, 3, 6, 10, 15]);
    await port.apply([{ kind: "write", sheet: "Carry", row: 1, column: 0, cells: [[{ value: 11 }]] }]);
    expect(await balance()).toEqual([11, 13, 16, 20, 25]);
  } finally {
    dispose();
  }
});

test("a table that goes with its sheet leaves no figures behind", () =>
  withSums(async ({ port }, shown) => {
    await port.apply([{ kind: "delete-sheet", sheet: "Arrays" }]);
    expect(await shown()).toEqual([{ error: "#NAME?" }, "none", { error: "#NAME?" }]);
  }));

test("the engine's own tables still take the column before the first for one that is not there", async () => {
  const cellData = { 0: { 0: { v: "Other" }, 1: { v: "Part" }, 2: { v: "Held" }, 4: { f: "=SUM(Stock[Gone])" } }, 1: { 0: { v: 5 }, 1: { v: "Drive" }, 2: { v: 3 } } };
  const univer = bootEngine({ sheetOrder: ["s"], sheets: { s: { id: "s", name: "Stock", cellData } } });
  const injector = univer.__getInjector();
  const workbook = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET)!;
  const reference = { sheetId: "s", range: { startRow: 0, endRow: 1, startColumn: 1, endColumn: 2 }, titleMap: new Map([["Part", 0], ["Held", 1]]) };
  injector.get(ICommandService).syncExecuteCommand(SetSuperTableMutation.id, { unitId: workbook.getUnitId(), tableName: "Stock", reference }, { onlyLocal: true });
  try {
    await injector.get(FormulaCalculationSessionService).waitForLatestApplied(undefined, 1_000);
    expect(workbook.getActiveSheet().getCellRaw(0, 4)?.v).toBe(5);
  } finally {
    univer.dispose();
  }
});
