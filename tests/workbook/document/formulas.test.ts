import fc from "fast-check";
import { formulaReferences, formulaShifter, formulaTokens } from "../../../src/sheet";
import { moveReferences, renameReferences } from "../../../src/workbook/document/move-lines";
import { outOfDate } from "../../../src/workbook/document/out-of-date";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

test("the pieces of a formula put together are the formula", () => {
  const known = ["A1", "$B$2:C9", "'it''s'!", "Sheet1:Sheet4!", "[1]Data!", "SUM(", ")", "Table1[[#This Row],[a]b]]", '"x""y"', "1.5E-3", "#N/A", "LOG10(", "2:3", "$A:B"];
  const piece = fc.constantFrom(...known, "+", ":", " ", "Ä_1", "[", "'", "#");
  fc.assert(fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
    const formula = pieces.join("");
    expect(formulaTokens(formula).map(({ text }) => text).join("")).toBe(formula);
  }), { seed: 11, numRuns: 500 });
});

// ECMA-376 part 1, section 18.3.1.40: a shared formula is written once, and moves with each cell that has it.
test.each([
  ["A1+$B$2", 2, 1, "B3+$B$2"],
  ["SUM($A1:B$3)", 1, 1, "SUM($A2:C$3)"],
  ["LOG10(A1)&\"A1\"&'A1'!A1", 1, 0, "LOG10(A2)&\"A1\"&'A1'!A2"],
  ["SUM(A:A)+SUM(1:1)+SUM($A:$A)", 1, 1, "SUM(B:B)+SUM(2:2)+SUM($A:$A)"],
  ["A1", -1, 0, "#REF!"],
])("the shared formula %s, %i rows down and %i columns on, is %s", (formula, rows, columns, shifted) => {
  expect(formulaShifter(formula)(rows, columns)).toBe(shifted);
});

test.each([
  ["two rows come before them", "A3+A1+SUM(A1:A5)", "row", 2, 2, "A5+A1+SUM(A1:A7)"],
  ["rows inside a range go", "SUM($A$2:$A$9)", "row", 3, -2, "SUM($A$2:$A$7)"],
  ["all their rows go", "A3+SUM(A3:A4)", "row", 2, -2, "#REF!+SUM(#REF!)"],
  ["a column comes", "B1+SUM(A:C)+SUM(2:3)", "column", 1, 1, "C1+SUM(A:D)+SUM(2:3)"],
  ["they are on another sheet", "Other!A3+A3", "row", 0, 1, "Other!A3+A4"],
  ["both ends name the sheet", "SUM(Own!A1:Own!A5)+SUM(Other!A1:Other!A5)", "row", 2, 2, "SUM(Own!A1:Own!A7)+SUM(Other!A1:Other!A5)"],
  ["they end with the sheet", "SUM(A2:A1048576)+A1048576", "row", 2, 2, "SUM(A2:A1048576)+#REF!"],
  ["they are all rows or all columns", "SUM(A1:A1048576)+SUM($A$2:$XFD$2)", "row", 0, 1, "SUM(A1:A1048576)+SUM($A$3:$XFD$3)"],
  ["columns come before the last", "SUM($A$2:$XFD$2,B1:XFD1)", "column", 0, 1, "SUM($A$2:$XFD$2,C1:XFD1)"],
  ["rows go from all of them", "SUM(A1:A1048576)", "row", 4, -2, "SUM(A1:A1048576)"],
  ["the sheet is named outright", "'Own'!A3+Other!B3", "row", 0, 1, "'Own'!A4+Other!B3"],
] as const)("references move when %s", (_what, formula, axis, at, by, moved) => {
  expect(moveReferences(formula, "Own", "Own", { axis, at, by })).toBe(moved);
});

test("two sheets that swap names swap them in formulas", () => {
  expect(renameReferences("One!A1+'two'!B1+\"One!\"", new Map([["one", "Two"], ["two", "One"]]))).toBe("'Two'!A1+'One'!B1+\"One!\"");
});

test("ranges, whole columns and sheets are read off a formula", () => {
  expect(formulaReferences("SUM(B2:A1)+'x y'!$C$3+S1:S4!D:D")).toEqual([
    { area: { row: 0, column: 0, rows: 2, columns: 2 } },
    { sheet: "x y", area: { row: 2, column: 2, rows: 1, columns: 1 } },
    { sheet: "S1", lastSheet: "S4", area: { row: 0, column: 3, rows: 1_048_576, columns: 1 } },
  ]);
});

test("what keeps its figure is out of date behind a changed cell, by name, table, sheets and chain; live formulas only behind such a one", () => {
  const f = (cell: string, formula: string) => `<c r="${cell}"><f>${formula}</f><v>1</v></c>`;
  const { document } = readFile(rawWorkbook({
    sheets: {
      One: `<sheetData><row r="1"><c r="A1"><v>1</v></c>${[
        f("B1", "A1+1"), f("C1", "Rate+1"), f("D1", "SUM(One:Two!A1)"), f("E1", "D1*2"), f("F1", "INDIRECT(&quot;A&quot;&amp;1)"), f("G1", "A2"),
      ].join("")}</row></sheetData>`,
      Two: `<sheetData><row r="1">${f("A1", "One!E1")}${f("B1", "One!B1")}</row></sheetData>`,
    },
    behind: "<definedNames><definedName name=\"Rate\">One!$A$1</definedName></definedNames>",
  }));
  const kept = new Set(["0 2", "0 3", "0 5", "0 6"]);
  const found = outOfDate(document, [{ sheet: "sheet1", row: 0, column: 0 }], ({ sheet, row, column }) => sheet === "sheet1" && kept.has(`${row} ${column}`));
  expect(found.map(({ sheet, column }) => `${sheet} ${column}`).sort()).toEqual(["sheet1 2", "sheet1 3", "sheet1 4", "sheet1 5", "sheet2 0"]);
});

test("a range on another sheet keeps both its ends when rows come on the formula's own sheet", () => {
  const move = { axis: "row", at: 3, by: 2 } as const;
  expect(moveReferences("=SUM(Lists!$A$1:$A$9)+SUM(A1:A9)+SUM('Two Lists'!B8:C9,B8)", "Data", "Data", move)).toBe("=SUM(Lists!$A$1:$A$9)+SUM(A1:A11)+SUM('Two Lists'!B8:C9,B10)");
});
