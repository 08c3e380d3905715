import { outOfDate } from "../../../src/workbook/document/out-of-date";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

/** The places of kept formulas that are out of date once A1 changed: each formula stands in a row of its own, from A2 on. */
function staleAfterA1(...formulas: string[]): string[] {
  const rows = formulas.map((formula, index) => `<row r="${index + 2}"><c r="A${index + 2}"><f>${formula}</f><v>1</v></c></row>`);
  const { document } = readFile(rawWorkbook({ sheets: { Only: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row>${rows.join("")}</sheetData>` } }));
  return outOfDate(document, [{ sheet: document.sheets[0]!.id, row: 0, column: 0 }], () => true).map(({ row }) => formulas[row - 1]!);
}

test("a formula that only asks the clock or chance keeps its figure, and what is computed from it, whatever changes elsewhere", () => {
  expect(staleAfterA1("TODAY()", "NOW()+1", "A2*2", "RAND()", "RANDBETWEEN(1,6)")).toEqual([]);
});

test("a formula that asks the clock and looks at what changed is out of date, and one that finds its cells by a text or a distance always", () => {
  const stale = ["TODAY()-A1", "INDIRECT(\"B9\")", "OFFSET(B9,1,0)", "CELL(\"row\",B9)"];
  expect(staleAfterA1(...stale)).toEqual(stale);
});
