import type { ICellData } from "@univerjs/core";
import { openHeadless } from "../../../src/headless/open-headless";
import type { Cell, CellValue } from "../../../src/sheet";
import { restComputedFormulas, restingFormula } from "../../../src/workbook/engine/resting-formulas";

async function shownAfter(known: number | undefined, written: { readonly row: number; readonly column: number }): Promise<(readonly CellValue[])[]> {
  const rows: Cell[][] = [[{ value: 1 }, { formula: "=$A$1+1", value: known }, { formula: "=SUM(A1:B1)", value: known }, { value: "mark" }]];
  const workbook = await openHeadless();
  try {
    await workbook.port.apply([{ kind: "add-sheet", plan: { name: "T", styles: {}, columnWidths: [], rows } }]);
    await workbook.port.apply([{ kind: "write", sheet: "T", ...written, cells: [[{ value: 10 }]] }]);
    const { values, formulas } = (await workbook.port.read(["T"])).sheets.find(({ name }) => name === "T")!;
    expect(formulas[0]).toEqual([null, "=$A$1+1", "=SUM(A1:B1)", null]);
    return [...values];
  } finally {
    workbook.dispose();
  }
}

// 7 is no right answer: that it shows tells that nothing was computed.
test("a known result stands while what its formula looks at is not written", async () => {
  expect(await shownAfter(7, { row: 0, column: 3 })).toEqual([[1, 7, 7, 10]]);
});

test("a formula is computed once a cell it looks at is written, and those that follow from it", async () => {
  expect(await shownAfter(7, { row: 0, column: 0 })).toEqual([[10, 11, 21, "mark"]]);
});

test("a formula without a known result is computed at once", async () => {
  expect(await shownAfter(undefined, { row: 0, column: 3 })).toEqual([[1, 2, 3, 10]]);
});

describe("of a sheet out of a file", () => {
  const restedFormulas = (second: ICellData) => {
    const sheet = { cellData: { 0: { 0: { f: "=1+1" }, 1: second } } };
    restComputedFormulas(sheet);
    return [sheet.cellData[0][0], sheet.cellData[0][1]].map((cell) => restingFormula(cell));
  };

  test("all formulas rest where one has its result: one without answered empty text", () => {
    expect(restedFormulas({ f: '=""&"x"', v: "x" })).toEqual(["=1+1", '=""&"x"']);
  });

  test("none rests where none has a result: the program that saved it did not compute", () => {
    expect(restedFormulas({ v: "x" })).toEqual([null, null]);
  });
});
