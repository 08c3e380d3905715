import fc from "fast-check";
import { areasMeet, cellArea, isInArea, type Area } from "../../src/sheet";

const area = fc.record({ row: fc.nat(6), column: fc.nat(6), rows: fc.integer({ min: 1, max: 4 }), columns: fc.integer({ min: 1, max: 4 }) });

/** Lists the cells of an area one by one: slow, and plain to see. */
function cellsOf({ row, column, rows, columns }: Area): string[] {
  return Array.from({ length: rows }, (_, y) => Array.from({ length: columns }, (__, x) => `${row + y},${column + x}`)).flat();
}

test("a cell is in an area exactly where it is one of its cells", () => {
  fc.assert(
    fc.property(area, fc.nat(10), fc.nat(10), (one, row, column) => {
      expect(isInArea({ row, column }, one)).toBe(cellsOf(one).includes(`${row},${column}`));
      expect(cellsOf(cellArea({ row, column }))).toEqual([`${row},${column}`]);
    }),
    { seed: 4, numRuns: 300 },
  );
});

test("two areas meet exactly where they have a cell in common", () => {
  fc.assert(
    fc.property(area, area, (one, other) => {
      const cells = new Set(cellsOf(one));
      expect(areasMeet(one, other)).toBe(cellsOf(other).some((cell) => cells.has(cell)));
    }),
    { seed: 5, numRuns: 300 },
  );
});
