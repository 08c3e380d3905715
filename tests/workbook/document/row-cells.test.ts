import { RowCells } from "../../../src/workbook/document/row-cells";
import { cellAt, putCell, type CellGrid, type DocumentCell } from "../../../src/workbook/document/workbook-document";

const cell = (value: number): DocumentCell => ({ value, look: 0 });

test.each<[string, number[]]>([
  ["side by side", [3, 4, 5]],
  ["with gaps", [3, 5, 6]],
  ["in any order", [6, 3, 4]],
  ["far from each other", [0, 16_383]],
  ["alone", [7]],
])("cells %s are found where they were put, and nowhere else", (_, columns) => {
  const line = new Map(columns.map((column) => [column, cell(column)]));
  const row = RowCells.of(line);
  line.clear();
  const inOrder = (list: Iterable<number>) => [...list].sort((a, b) => a - b);
  expect(inOrder(row.keys())).toEqual(inOrder(columns));
  expect([...row].map(([column, { value }]) => column === value)).toEqual(columns.map(() => true));
  expect(row.size).toBe(columns.length);
  for (let column = -1; column < 10; column += 1) expect([row.has(column), row.get(column)?.value]).toEqual([columns.includes(column), columns.includes(column) ? column : undefined]);
});

test("a row that was read is opened when a cell is put into it, and stays itself elsewhere", () => {
  const row = RowCells.of(new Map([[1, cell(1)]]));
  const [grid, other]: [CellGrid, CellGrid] = [new Map([[0, row]]), new Map([[0, row]])];
  putCell(grid, 0, 9, cell(9));
  putCell(grid, 0, 1, undefined);
  expect([cellAt(grid, 0, 9)?.value, cellAt(grid, 0, 1), cellAt(other, 0, 9), cellAt(other, 0, 1)?.value]).toEqual([9, undefined, undefined, 1]);
});
