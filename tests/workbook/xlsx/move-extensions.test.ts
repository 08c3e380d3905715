import { moveParts } from "../../../src/workbook/xlsx/move-parts";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

const rule = (area: string) => `<x14:dataValidation type="list"><x14:formula1><xm:f>Lists!$A$1:$A$9</xm:f></x14:formula1><xm:sqref>${area}</xm:sqref></x14:dataValidation>`;
const line = (cell: string, row: number) => `<x14:sparkline><xm:f>Data!A${row}:C${row}</xm:f><xm:sqref>${cell}</xm:sqref></x14:sparkline>`;
const names = 'xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"';
const extended = (rules: string, lines: string) =>
  `<sheetData/><extLst><ext ${names} uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}"><x14:dataValidations>${rules}</x14:dataValidations></ext>` +
  `<ext ${names} uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}">` +
  `<x14:sparklineGroups><x14:sparklineGroup><x14:sparklines>${lines}</x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>`;

function moved(by: number): string {
  const open = readFile(rawWorkbook({ sheets: { Data: extended(rule("B3:B8 D3") + rule("B4:B5"), line("E4", 4) + line("E9", 9)), Lists: "<sheetData/>" } }));
  const { part } = open.sheets[0]!;
  moveParts(open, { part, name: "Data", move: { axis: "row", at: 3, by } });
  return open.file.read(part)!;
}

test("areas and formulas of rules and sparklines in the extensions of a sheet move with rows that come", () => {
  expect(moved(2)).toContain(extended(rule("B3:B10 D3") + rule("B6:B7"), line("E6", 6) + line("E11", 11)));
});

test("a rule or a sparkline in an extension goes with the last of its rows, others stay", () => {
  expect(moved(-2)).toContain(extended(rule("B3:B6 D3"), line("E7", 7)));
});
