import { UniverInstanceType } from "@univerjs/core";
import { Workbook } from "exceljs";
import { FormulaCalculationSessionService } from "@univerjs/sheets-formula";
import { bootEngine, openHeadless } from "../../../src/headless/open-headless";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";

test("whoever reads while somebody else waits for the formulas waits too", async () => {
  const { port, settle, dispose } = await openHeadless();
  try {
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 2 }, { formula: "=A1*21" }]] }]);
    const [, { sheets }] = await Promise.all([settle(), port.read(["Sheet1"])]);
    expect(sheets[0]!.values).toEqual([[2, 42]]);
  } finally {
    dispose();
  }
});

test("a workbook that is closed while it computes refuses who waits for it, and leaves no timer that keeps the process alive", async () => {
  const { port, dispose } = await openHeadless();
  const set = jest.spyOn(globalThis, "setTimeout");
  const cleared = jest.spyOn(globalThis, "clearTimeout");
  const timers = () => set.mock.results.filter((_, index) => (set.mock.calls[index]![1] ?? 0) > 1_000).map(({ value }) => value as unknown);
  try {
    await port.apply([{ kind: "add-sheet", plan: { name: "Sums", rows: [[{ formula: "=1+1" }]], styles: {}, columnWidths: [] } }]);
    const reading = port.read();
    expect(timers()).not.toEqual([]);
    dispose();
    await expect(reading).rejects.toThrow("The workbook was closed");
    const stopped = new Set(cleared.mock.calls.map(([timer]) => timer as unknown));
    expect(timers().filter((timer) => !stopped.has(timer))).toEqual([]);
  } finally {
    set.mockRestore();
    cleared.mockRestore();
  }
});

test("what was begun for a workbook is refused once another one is open in its place", async () => {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  try {
    const before = createBrowserPort(univer, live);
    univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...emptyWorkbook(), id: "other" });
    live.wake();
    const cells = [[{ value: "lost" }]];
    await expect(before.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells }])).rejects.toThrow("Another workbook was opened meanwhile.");
    await expect(before.read()).rejects.toThrow("Another workbook was opened meanwhile.");
    expect((await createBrowserPort(univer, live).read()).sheets[0]!.values).toEqual([]);
  } finally {
    live.dispose();
  }
});

test("an entry is waited for once: what it computes and puts into cells asks for nothing more", async () => {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  try {
    const sheet = live.workbook.getActiveSheet();
    const set = (row: object) => live.run("sheet.mutation.set-range-values", { subUnitId: sheet.getSheetId(), cellValue: { 0: row } });
    set({ 0: { v: 2 }, 1: { f: "=A1*21" }, 2: { f: "=SEQUENCE(A1)" } });
    await live.settle();
    const waited = jest.spyOn(univer.__getInjector().get(FormulaCalculationSessionService), "waitForLatestApplied");
    set({ 0: { v: 3 } });
    await live.settle();
    expect([1, 2].map((column) => sheet.getCellRaw(0, column)?.v)).toEqual([63, 1]);
    expect(live.spills(sheet).map(({ values }) => values)).toEqual([[[1], [2], [3]]]);
    expect(waited).toHaveBeenCalledTimes(1);
  } finally {
    live.dispose();
  }
});

/** Keeps the thread busy with other work at every turn, each time for longer than the engine gives a calculation to begin. */
function keepBusy(): () => void {
  const timer = setInterval(() => {
    for (const end = performance.now() + 400; performance.now() < end; );
  }, 1);
  return () => clearInterval(timer);
}

test("a workbook comes to rest with the figures of now though other work holds up the thread at every turn", async () => {
  const live = new LiveWorkbook(bootEngine(emptyWorkbook()));
  try {
    const sheet = live.workbook.getActiveSheet();
    const set = (row: object) => live.run("sheet.mutation.set-range-values", { subUnitId: sheet.getSheetId(), cellValue: { 0: row } });
    set({ 0: { v: 2 }, 1: { f: "=A1*21" } });
    await live.settle();
    set({ 0: { v: 3 } });
    const stop = keepBusy();
    await live.settle().finally(stop);
    expect(sheet.getCellRaw(0, 1)?.v).toBe(63);
  } finally {
    live.dispose();
  }
});

test("a list over a whole column is still over the whole column where the sheet was given more rows", async () => {
  const file = new Workbook();
  const sheet = file.addWorksheet("Sheet1");
  sheet.getCell("A1").value = "Answer";
  (sheet as unknown as { dataValidations: { add(area: string, rule: object): void } }).dataValidations.add("A2:A1048576", { type: "list", allowBlank: true, formulae: ['"yes,no"'] });
  const bytes = new Uint8Array(await file.xlsx.writeBuffer());
  const live = new LiveWorkbook(bootEngine(readWorkbook(bytes)));
  try {
    expect(live.makeRoom(live.workbook.getActiveSheet(), { rows: 500, columns: 1 })).toBe(true);
    expect(live.makeRoom(live.workbook.getActiveSheet(), { rows: 1_048_577, columns: 1 })).toBe(false);
    expect(live.workbook.getActiveSheet().getRowCount()).toBeGreaterThanOrEqual(500);
    const saved = readFile(writeWorkbook(live.store(), bytes).bytes);
    expect(saved.document.sheets[0]!.typingRules.map(({ areas }) => areas)).toEqual([[{ row: 1, column: 0, rows: 1_048_575, columns: 1 }]]);
  } finally {
    live.dispose();
  }
});
