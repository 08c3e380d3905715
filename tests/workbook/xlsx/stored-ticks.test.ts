import { readSnapshot } from "../../../src/workbook/xlsx/read-snapshot";
import { rawWorkbook } from "../../support/raw-workbook";

test("a tick in a cell of text format is read as one, as LibreOffice stores it; a number of another formula stays one", () => {
  const ticks = '<c r="A1" t="n"><f aca="false">TRUE()</f><v>1</v></c><c r="B1" t="n"><f aca="false">FALSE()</f><v>0</v></c>';
  const cells = `${ticks}<c r="C1"><f>TRUE()+0</f><v>1</v></c><c r="D1" t="b"><f>TRUE()</f><v>1</v></c>`;
  const { values, formulas } = readSnapshot(rawWorkbook({ sheets: { Only: `<sheetData><row r="1">${cells}</row></sheetData>` } })).sheets[0]!;
  expect(values[0]).toEqual([true, false, 1, true]);
  expect(formulas[0]).toEqual(["=TRUE()", "=FALSE()", "=TRUE()+0", "=TRUE()"]);
});
