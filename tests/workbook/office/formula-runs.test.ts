import type { Cell } from "../../../src/sheet";
import { formulaRuns } from "../../../src/workbook/office/formula-runs";

describe("formulas that repeat a row above", () => {
  const rows = (texts: readonly (readonly string[])[]) => texts.map((line) => line.map((formula): Cell => (formula === "" ? {} : { formula })));

  test("are found side by side, and below each other as one area", () => {
    expect(formulaRuns(rows([["=A1", "=B$1"], ["=A2", "=B$1"], ["=A3", "=B$1"], ["", ""], ["=A5", "=B$1"]]))).toEqual([
      { source: { row: 0, column: 0, rows: 1, columns: 2 }, copies: [{ row: 1, column: 0, rows: 2, columns: 2 }, { row: 4, column: 0, rows: 1, columns: 2 }] },
    ]);
  });

  test("are none where a formula looks elsewhere, or stands in another column", () => {
    expect(formulaRuns(rows([["=A1", ""], ["=A1", ""], ["", "=A3"]]))).toEqual([]);
  });
});
