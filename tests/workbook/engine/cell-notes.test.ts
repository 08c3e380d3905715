import { ICommandService, IUniverInstanceService } from "@univerjs/core";
import { Workbook } from "exceljs";
import { bootEngine } from "../../../src/headless/open-headless";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { bringUpNotes } from "../../../src/workbook/engine/stored-notes";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";

let live: LiveWorkbook;
let commands: ICommandService;

/** Two notes beside three filled rows, as another library writes them. */
async function noted(): Promise<Uint8Array> {
  const file = new Workbook();
  const sheet = file.addWorksheet("Stock");
  sheet.addRows([["Part", "Count"], ["rail", 4], ["drive", 12]]);
  sheet.getCell("B2").note = "counted twice";
  sheet.getCell("A3").note = { texts: [{ text: "spare ", font: { bold: true } }, { text: "in box 3" }] };
  return new Uint8Array(await file.xlsx.writeBuffer());
}

function open(data: ReturnType<typeof readWorkbook>): void {
  const univer = bootEngine(data);
  live = new LiveWorkbook(univer);
  commands = univer.__getInjector().get(ICommandService);
  // What goes back belongs to the workbook that has the keyboard.
  univer.__getInjector().get(IUniverInstanceService).focusUnit(live.workbook.getUnitId());
}

afterEach(() => {
  live.dispose();
});

const sheet = () => live.workbook.getActiveSheet();
const notes = () => Object.fromEntries(live.notes.of(sheet()).map(({ row, column, text }) => [`${String.fromCharCode(65 + column)}${row + 1}`, text]));
const write = (row: number, column: number, text: string) => {
  live.notes.write(live.workbook, sheet(), { row, column }, text);
};
/** Carries out a command of a person, and waits until notes followed. */
const run = async (id: string, params: object = {}) => {
  await commands.executeCommand(id, { unitId: live.workbook.getUnitId(), subUnitId: sheet().getSheetId(), ...params });
  await new Promise((resolve) => setTimeout(resolve, 0));
};
const lines = (axis: "Row" | "Column", at: number, count = 1) => ({
  range: { startRow: 0, endRow: sheet().getRowCount() - 1, startColumn: 0, endColumn: sheet().getColumnCount() - 1, [`start${axis}`]: at, [`end${axis}`]: at + count - 1 },
});

test("notes of a file are there, and one more note, another text and a deletion are each one step back", async () => {
  open(readWorkbook(await noted()));
  expect(notes()).toEqual({ B2: "counted twice", A3: "spare in box 3" });
  write(0, 1, "as of March");
  write(1, 1, "counted once");
  write(2, 0, "");
  const after = { B1: "as of March", B2: "counted once" };
  expect(notes()).toEqual(after);
  for (let steps = 0; steps < 3; steps += 1) await run("univer.command.undo");
  expect(notes()).toEqual({ B2: "counted twice", A3: "spare in box 3" });
  for (let steps = 0; steps < 3; steps += 1) await run("univer.command.redo");
  expect(notes()).toEqual(after);
});

describe("a note follows its cell", () => {
  test.each([
    ["rows come above", "sheet.command.insert-row", () => ({ ...lines("Row", 0, 2), direction: 0 }), { B4: "counted twice", A5: "spare in box 3" }],
    ["a column goes before it", "sheet.command.remove-col", () => lines("Column", 0), { A2: "counted twice" }],
    ["its row goes", "sheet.command.remove-row", () => lines("Row", 1), { A2: "spare in box 3" }],
    [
      "its cell is moved", "sheet.command.move-range",
      () => ({ fromRange: { startRow: 1, endRow: 1, startColumn: 1, endColumn: 1 }, toRange: { startRow: 6, endRow: 6, startColumn: 3, endColumn: 3 } }),
      { D7: "counted twice", A3: "spare in box 3" },
    ],
    [
      "rows are sorted", "sheet.command.reorder-range",
      () => ({ range: { startRow: 1, endRow: 2, startColumn: 0, endColumn: 1 }, order: { 1: 2, 2: 1 } }),
      { B3: "counted twice", A2: "spare in box 3" },
    ],
  ])("when %s, and is back where it was one step back", async (_, command, params, expected) => {
    open(readWorkbook(await noted()));
    await run(command, params());
    expect(notes()).toEqual(expected);
    await run("univer.command.undo");
    expect(notes()).toEqual({ B2: "counted twice", A3: "spare in box 3" });
  });

  test("and comes back with its row as it was written last", async () => {
    open(readWorkbook(await noted()));
    write(1, 1, "counted once");
    await run("sheet.command.remove-row", lines("Row", 1));
    await run("univer.command.undo");
    expect(notes()["B2"]).toBe("counted once");
  });

  test("into the copy of a sheet, and back with a sheet that was deleted", async () => {
    open(readWorkbook(await noted()));
    await run("sheet.command.copy-sheet");
    expect(live.workbook.getSheets().map((one) => live.notes.of(one).length)).toEqual([2, 2]);
    await run("sheet.command.remove-sheet");
    await run("univer.command.undo");
    expect(live.workbook.getSheets().map((one) => live.notes.of(one).length)).toEqual([2, 2]);
  });
});

test("a plan that an earlier release kept in the browser still has its notes", async () => {
  const data = readWorkbook(await noted());
  const { sheet1 } = data.sheets;
  const earlier = { ...data, resources: [], sheets: { sheet1: { ...sheet1, custom: { ...(sheet1!.custom as object), notes: [{ row: 1, column: 1, note: "counted twice" }] } } } };
  open(bringUpNotes(earlier));
  expect(notes()).toEqual({ B2: "counted twice" });
  write(1, 1, "counted once");
  const { data: kept } = live.store();
  live.dispose();
  open(bringUpNotes(kept));
  expect(notes()).toEqual({ B2: "counted once" });
});

test("a file saved with other notes has them, and what did not change as it was", async () => {
  const bytes = await noted();
  open(readWorkbook(bytes));
  await run("sheet.command.insert-row", { ...lines("Row", 0), direction: 0 });
  write(2, 1, "counted once");
  write(1, 1, "two\nlines & <more>");
  const file = new Workbook();
  await file.xlsx.load(writeWorkbook(live.store(), bytes).bytes as never);
  const saved = file.getWorksheet("Stock")!;
  expect(["B3", "B2"].map((cell) => saved.getCell(cell).note)).toEqual(["counted once", "two\nlines & <more>"]);
  expect(saved.getCell("A4").note).toMatchObject({ texts: [{ text: "spare ", font: { bold: true } }, { text: "in box 3" }] });
});
