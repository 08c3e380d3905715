import { meetsLeftOut, neededCells } from "../../../src/workbook/document/needed-cells";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook, type RawWorkbook } from "../../support/raw-workbook";

const row = (number: number, ...cells: readonly string[]) => `<row r="${number}">${cells.join("")}</row>`;
const value = (cell: string) => `<c r="${cell}"><v>1</v></c>`;
const formula = (cell: string, text: string, result = "") => `<c r="${cell}"><f>${text}</f>${result === "" ? "" : `<v>${result}</v>`}</c>`;
const data = (...rows: readonly string[]) => `<sheetData>${rows.join("")}</sheetData>`;

function read(raw: RawWorkbook) {
  return readFile(rawWorkbook(raw)).document;
}

/** The cells that are left, by sheet. */
function left(raw: RawWorkbook): Record<string, string[]> {
  const { sheets } = neededCells(read(raw));
  return Object.fromEntries(
    sheets.map(({ name, cells }) => [name, [...cells].flatMap(([line, ofRow]) => [...ofRow.keys()].map((column) => `${String.fromCharCode(65 + column)}${line + 1}`))]),
  );
}

const grid = data(row(1, value("A1"), value("B1"), value("E1")), row(2, value("A2"), value("B2")), row(3, value("A3"), value("B3")), row(9, value("C9")));

test("what an open formula looks at is needed, on whatever sheet, and what shows how far a sheet reaches", () => {
  expect(left({ sheets: { One: grid, Two: data(row(1, formula("A1", "SUM(One!B2:B3)"), value("B1"), value("C1"))) } })).toEqual({
    One: ["A1", "E1", "B2", "B3", "C9"],
    Two: ["A1", "C1"],
  });
});

test("a formula behind an open one is needed with all it looks at, one with a figure beside it is not", () => {
  const sheet = data(
    row(1, formula("A1", "1+1"), formula("B1", "A1+D5", "3"), formula("C1", "D4+1", "2")),
    row(4, value("D4")),
    row(5, value("D5"), value("F5")),
  );
  expect(left({ sheets: { One: sheet } })["One"]).toEqual(["A1", "B1", "D5", "F5"]);
});

test.each([
  ["a name", "Rate*2", "<definedNames><definedName name=\"Rate\">One!$B$2</definedName></definedNames>"],
  ["a name that two sheets have, each for itself", "Rate*2",
    '<definedNames><definedName name="Rate" localSheetId="1">One!$B$2</definedName><definedName name="Rate" localSheetId="0">One!$A$3</definedName></definedNames>'],
  ["a name that stands for a function", "Rate(1)", "<definedNames><definedName name=\"Rate\">_xlfn.LAMBDA(_xlpm.x,_xlpm.x*One!$B$2)</definedName></definedNames>"],
  ["the same cell of several sheets", "SUM(One:Two!B2)", ""],
  ["whole columns", "SUM(One!B:B)", ""],
  ["whole rows", "SUM(One!2:2)", ""],
])("cells that a formula reaches by %s are needed", (_, text, behind) => {
  expect(left({ sheets: { One: grid, Two: data(row(1, formula("A1", text))) }, behind })["One"]).toContain("B2");
});

test.each([
  ["finds its cells by a text", 'INDIRECT("One!B"&amp;2)'],
  ["computes the end of a range", "SUM(One!A1:INDEX(One!B:B,3))"],
  ["names the sheet at both ends of a range", "SUM(One!A1:One!B3)"],
])("where an open formula %s everything is needed", (_, text) => {
  const document = read({ sheets: { One: grid, Two: data(row(1, formula("A1", text))) } });
  expect(neededCells(document)).toBe(document);
});

test("a formula that answers anew each time and has its figure asks for nothing", () => {
  expect(left({ sheets: { One: grid, Two: data(row(1, formula("A1", "1+1"), formula("B1", 'INDIRECT("One!B2")', "1"))) } })["One"]).toEqual(["A1", "E1", "C9"]);
});

test("cells that were left out and are filled by a formula are noticed, those that are there are not", () => {
  const document = read({ sheets: { One: data(row(1, formula("A1", "B9"), value("D1")), row(2, value("A2"), value("D2"))) } });
  const needed = neededCells(document);
  const [{ id }] = document.sheets as [(typeof document.sheets)[number]];
  const meets = (row: number, column: number, rows: number) => meetsLeftOut(document, needed, [{ sheet: id, area: { row, column, rows, columns: 1 } }]);
  expect(meets(0, 0, 1)).toBe(false);
  expect(meets(0, 1, 5)).toBe(false);
  expect(meets(0, 0, 5)).toBe(false);
  expect(meets(0, 3, 5)).toBe(true);
});

test("more formulas than the engine computes in a while get a sentence", () => {
  const many = data(...Array.from({ length: 20_001 }, (_, index) => row(index + 1, formula(`A${index + 1}`, "1+1"))));
  expect(() => left({ sheets: { One: many } })).toThrow("has 20,001 formulas to compute; 20,000 is the most. Let a spreadsheet program compute and save it");
});
