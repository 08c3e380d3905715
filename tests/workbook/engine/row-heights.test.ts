import { WrapStrategy } from "@univerjs/core";
import { countLines, estimateRowHeights, givenHeight } from "../../../src/workbook/engine/row-heights";

test.each([
  ["one line", 20, 1],
  ["two words", 5, 2],
  ["a line\nand another", 40, 2],
  ["unbreakably-long-word", 10, 3],
  ["", 10, 1],
])("%j takes, at %i characters a line, %i lines", (text, characters, lines) => {
  expect(countLines(text, characters)).toBe(lines);
});

test("only rows with wrapped text and no height of their own are made higher", () => {
  const long = "word ".repeat(60);
  const sheet = {
    cellData: { 0: { 0: { v: long, s: "wrap" } }, 1: { 0: { v: long } }, 2: { 0: { v: long, s: "wrap" } }, 3: { 0: { v: "short", s: "wrap" } } },
    rowData: { 2: { h: 30 } },
  };
  estimateRowHeights(sheet, { wrap: { tb: WrapStrategy.WRAP } });
  expect(sheet.rowData).toEqual({ 0: { h: expect.any(Number) as number, ia: 1 }, 2: { h: 30 } });
  expect((sheet.rowData as Record<number, { h: number }>)[0]!.h).toBeGreaterThan(200);
});

test.each([
  ["a height of its own", { h: 30, ia: 0 }, 30],
  ["the height that every row has, which the engine does not keep", { ia: 0 }, 20],
  ["none", {}, undefined],
  ["one that the sheet found for it", { h: 30, ia: 1 }, undefined],
  ["one that it has outgrown", { h: 30, ia: 1, custom: { isGiven: true } }, 30],
])("a row that was given %s says so", (_, row, height) => {
  expect(givenHeight(row, 20)).toBe(height);
});
