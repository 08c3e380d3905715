import { jsonBytes, packSteps, rowBlocks } from "../../../src/workbook/office/step";

const queue = () => undefined;

describe("packing steps into requests", () => {
  test.each([
    ["steps that fit go together", [3, 3, 4], [[3, 3, 4]]],
    ["the one that would be over begins the next", [3, 3, 5], [[3, 3], [5]]],
    ["one that is over alone goes alone", [3, 20, 3], [[3], [20], [3]]],
    ["none make none", [], []],
  ])("%s", (_title, sizes, expected) => {
    expect(packSteps(sizes.map((bytes) => ({ bytes, queue })), 10).map((request) => request.map(({ bytes }) => bytes))).toEqual(expected);
  });

  test("rows are cut into blocks in order, and bytes are counted as UTF-8", () => {
    expect(jsonBytes(["é"])).toBe(6);
    expect(rowBlocks([["aaaa"], ["aaaa"], ["aaaa"]], 16)).toEqual([
      { from: 0, to: 2, bytes: 16 },
      { from: 2, to: 3, bytes: 8 },
    ]);
  });
});
