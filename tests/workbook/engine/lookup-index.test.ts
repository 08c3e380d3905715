import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/engine-formula";
import { openHeadless } from "../../../src/headless/open-headless";
import { indexOnlyLookups } from "../../../src/workbook/engine/lookup-index";

test("results of a column in which nothing is looked up are not indexed; an index that a lookup began follows them", () => {
  indexOnlyLookups();
  const rowsOf = (column: number) => [...(CELL_INVERTED_INDEX_CACHE.getCellValuePositions("unit", "sheet", column) ?? [])].map(([value, rows]) => [value, [...rows]]);
  CELL_INVERTED_INDEX_CACHE.set("unit", "sheet", 0, 12, 3, true);
  expect(rowsOf(0)).toEqual([]);
  CELL_INVERTED_INDEX_CACHE.set("unit", "sheet", 1, 12, 3);
  CELL_INVERTED_INDEX_CACHE.set("unit", "sheet", 1, 24, 3, true);
  expect(rowsOf(1)).toEqual([[12, []], [24, [3]]]);
});

test("a lookup in a column of formulas finds what they compute, also once their inputs changed", async () => {
  const { port, dispose } = await openHeadless();
  try {
    const cells = [1, 2, 3].map((value) => [{ value }, { formula: `=A${value}*3` }, { formula: "=MATCH(6,B1:B3,0)" }]);
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells }]);
    expect((await port.read(["Sheet1"])).sheets[0]!.values).toEqual([[1, 3, 2], [2, 6, 2], [3, 9, 2]]);
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 2 }], [{ value: 1 }]] }]);
    expect((await port.read(["Sheet1"])).sheets[0]!.values).toEqual([[2, 6, 1], [1, 3, 1], [3, 9, 1]]);
  } finally {
    dispose();
  }
});
