import { readSnapshot } from "../../../src/workbook/xlsx/read-snapshot";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { FileWriter, writeFile } from "../../../src/workbook/xlsx/write-workbook";
import { openDocumentPort } from "../../../src/workbook/document/document-port";
import { cellAt, type DocumentCell } from "../../../src/workbook/document/workbook-document";
import type { SheetPlan } from "../../../src/sheet";
import { rawWorkbook } from "../../support/raw-workbook";

const file = rawWorkbook({
  sheets: {
    Sum: '<sheetData><row r="1"><c r="A1"><f>Rates!A1*2+SUM(Rates!A1:A2)</f><v>9</v></c><c r="B1"><f>A1+1</f><v>10</v></c><c r="C1"><f>7*1</f><v>7</v></c></row></sheetData>',
    Rates: '<sheetData><row r="1"><c r="A1"><v>3</v></c></row></sheetData>',
  },
  behind: "<definedNames><definedName name=\"Rate\">Rates!$A$1</definedName></definedNames>",
});

const opened = () => openDocumentPort(readFile(file).document);
const sumCell = (cells: ReturnType<ReturnType<typeof opened>["finish"]>, column: number): DocumentCell => cellAt(cells.sheets[0]!.cells, 0, column)!;

test("formulas and names follow a sheet to its new name, and keep their figures", async () => {
  const { port, finish } = opened();
  await port.apply([{ kind: "rename-sheet", sheet: "Rates", name: "Old rates" }]);
  const after = finish();
  expect(sumCell(after, 0)).toMatchObject({ formula: "='Old rates'!A1*2+SUM('Old rates'!A1:A2)", value: 9, hasResult: true });
  expect(after.names).toMatchObject([{ name: "Rate", formula: "'Old rates'!$A$1" }]);
});

test("a sheet whose formulas name no sheet that changes its name is the very one it was", async () => {
  const document = readFile(file).document;
  const { port, finish } = openDocumentPort(document);
  const plan: SheetPlan = { name: "New", rows: [[{ value: 1 }]], columnWidths: [], styles: {} };
  await port.apply([{ kind: "add-sheet", plan }, { kind: "rename-sheet", sheet: "New", name: "Newer" }, { kind: "delete-sheet", sheet: "Newer" }]);
  const after = finish();
  expect(after.sheets.map((sheet, index) => sheet === document.sheets[index])).toEqual([true, true]);
});

test("formulas over several sheets follow the last of them, in whatever case it stands there", async () => {
  const three = rawWorkbook({ sheets: {
    Sum: '<sheetData><row r="1"><c r="A1"><f>SUM(One:TWO!A1)+\'two\'!A1</f><v>9</v></c></row></sheetData>',
    One: "<sheetData/>",
    Two: "<sheetData/>",
  } });
  const { port, finish } = openDocumentPort(readFile(three).document);
  await port.apply([{ kind: "rename-sheet", sheet: "Two", name: "Three" }]);
  expect(sumCell(finish(), 0).formula).toBe("=SUM(One:TWO!A1)+'Three'!A1");
});

test("formulas about a sheet that went say so", async () => {
  const { port, finish } = opened();
  await port.apply([{ kind: "delete-sheet", sheet: "Rates" }]);
  expect(sumCell(finish(), 0).formula).toBe("=#REF!*2+SUM(#REF!)");
});

test("a sheet that is read again is answered with the rows of before until one of its cells changes, whatever it is called by then", async () => {
  const { port } = opened();
  const rowsOf = async (name: string) => (await port.read([name])).sheets.find((sheet) => sheet.name === name)!;
  const before = await rowsOf("Rates");
  await port.apply([{ kind: "rename-sheet", sheet: "Rates", name: "Old rates" }, { kind: "hide-sheet", sheet: "Old rates" }]);
  const renamed = await rowsOf("Old rates");
  expect([renamed.values === before.values, renamed.formulas === before.formulas, renamed.visible]).toEqual([true, true, false]);
  await port.apply([{ kind: "write", sheet: "Old rates", row: 0, column: 0, cells: [[{ value: 4 }]] }]);
  expect((await rowsOf("Old rates")).values).toEqual([[4]]);
  expect(before.values).toEqual([[3]]);
  expect((await port.read(["Sum"])).sheets.map(({ values }) => values.length)).toEqual([1, 0]);
});

test("formulas behind a written cell go without a result, others keep theirs", async () => {
  const { port, finish } = opened();
  await port.apply([{ kind: "write", sheet: "Rates", row: 0, column: 0, cells: [[{ value: 4 }]] }]);
  const after = finish();
  expect([0, 1, 2].map((column) => sumCell(after, column).hasResult)).toEqual([false, false, true]);
});

const tall: SheetPlan = {
  name: "Tall",
  styles: {},
  columnWidths: [],
  rows: Array.from({ length: 40 }, (_, row) => [{ value: row }, {
    formula: row % 3 === 0 ? `=$A${row + 1}&"a"` : `=$A${row + 1}*2+SUM($A$1:$A$40)`, value: row % 3 === 0 ? `${row}a` : row * 2 + 780,
  }]),
};

test("a sheet that was put away stands in the file as one that was not, its formulas alike written once", async () => {
  const kept = opened();
  await kept.port.apply([{ kind: "add-sheet", plan: tall }]);
  const base = readFile(file);
  const whole = writeFile(base, base.document, kept.finish());
  const { port, finish, putAway } = opened();
  const open = readFile(file);
  const writer = new FileWriter(open, open.document);
  await port.apply([{ kind: "add-sheet", plan: tall }]);
  putAway((sheet, looks) => {
    writer.writeSheet(sheet, looks);
  });
  await expect(port.apply([{ kind: "write", sheet: "Tall", row: 0, column: 0, cells: [[{ value: 4 }]] }])).rejects.toThrow("put away");
  const bytes = writer.finish(finish());
  expect(Buffer.from(bytes).equals(Buffer.from(whole))).toBe(true);
  const { formulas, values } = readSnapshot(bytes).sheets[2]!;
  expect(formulas).toEqual(tall.rows.map((line) => line.map(({ formula }) => formula ?? null)));
  expect(values).toEqual(tall.rows.map((line) => line.map(({ value }) => value)));
  expect(readFile(bytes).file.read("xl/worksheets/sheet3.xml")!.split("SUM").length - 1).toBe(1);
});
