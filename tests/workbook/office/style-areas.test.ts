import fc from "fast-check";
import { areaAddress, type Cell } from "../../../src/sheet";
import { addressTexts, styleAreas } from "../../../src/workbook/office/style-areas";

describe("styleAreas", () => {
  test("joins runs of equal style in a row with the run below", () => {
    const rows = ["aab", "aab", "abb"].map((line) => Array.from(line).map((style): Cell => ({ style })));
    const addresses = Object.fromEntries([...styleAreas(rows)].map(([style, areas]) => [style, addressTexts(areas).join()]));
    expect(addresses).toEqual({ a: "A1:B2,A3", b: "C1:C2,B3:C3" });
  });

  test("covers every styled cell exactly once and no other", () => {
    const cell = fc.constantFrom<Cell>({ style: "a" }, { style: "b" }, {});
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 8 }), (rows) => {
        const seen = new Map<string, string>();
        for (const [style, areas] of styleAreas(rows)) {
          for (const { row, column, rows: height, columns } of areas) {
            for (let y = row; y < row + height; y += 1) {
              for (let x = column; x < column + columns; x += 1) {
                expect(seen.has(`${y},${x}`)).toBe(false);
                seen.set(`${y},${x}`, style);
              }
            }
          }
        }
        const wanted = rows.flatMap((line, y) => line.flatMap(({ style }, x) => (style === undefined ? [] : [[`${y},${x}`, style] as const])));
        expect(new Map([...seen].sort())).toEqual(new Map([...wanted].sort()));
      }),
      { seed: 20260101, numRuns: 300 },
    );
  });

  test("writes addresses in texts no longer than the host takes, losing none", () => {
    const areas = Array.from({ length: 3000 }, (_, row) => ({ row: row * 2, column: 27, rows: 1, columns: 1 }));
    const texts = addressTexts(areas);
    expect(Math.max(...texts.map((text) => text.length))).toBeLessThanOrEqual(8000);
    expect(texts.join().split(",")).toEqual(areas.map(areaAddress));
  });
});
