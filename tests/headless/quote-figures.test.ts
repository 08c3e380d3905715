import { loadSample } from "../../src/actions/load-sample";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";
import type { CellValue, Scalar } from "../../src/sheet";

// The third row of the sample's quote offers cs-array-1, row 7 of the sheet: 23 of 24 drives of 8 TB spread as 8+3, a tenth kept free, at a cost of 22,150 and a
// margin of a fifth. By hand: 22,150 / 0.8 = 27,687.5; 23 x 8 x 8 / 11 x 0.9 = 120.436 TB; 27,687.5 / 120.436 = 229.89 a TB.
let workbook: HeadlessWorkbook;
beforeAll(async () => {
  workbook = await openHeadless();
  await loadSample(workbook.port);
});
afterAll(() => workbook.dispose());

const columns = ["Item", "For", "Quantity", "Cost", "Margin", "Currency", "Valid until", "Usable TB", "Sell price", "Price per TB", "Kind", "To hosts TB"];

/** Writes cells of that row by their headers, and gives its price and its price per TB. */
async function priced(cells: Readonly<Record<string, Scalar>>): Promise<CellValue[]> {
  await workbook.port.apply(Object.entries(cells).map(([header, value]) => ({ kind: "write", sheet: "Quote", row: 6, column: columns.indexOf(header), cells: [[value === null ? {} : { value }]] })));
  await workbook.settle();
  const { values } = (await workbook.port.read()).sheets.find(({ name }) => name === "Quote")!;
  expect(values[3]!.slice(0, columns.length)).toEqual(columns);
  return ["Sell price", "Price per TB"].map((header) => values[6]![columns.indexOf(header)] ?? null);
}

test.each<[string, Readonly<Record<string, Scalar>>, number | null, number | null]>([
  ["one array", {}, 27_687.5, 229.893],
  ["four of them: the price is of all, that of a TB is of one", { Quantity: 4 }, 110_750, 229.893],
  ["no quantity: nothing", { Quantity: null }, null, null],
  ["a quantity of 0: no price a TB", { Quantity: 0 }, 0, null],
  ["a site of two such arrays: the price is of both, that of a TB as before", { Quantity: 2, For: "Cold Store" }, 55_375, 229.893],
  ["a list of two such arrays: as their site", { Quantity: 2, For: "CS-array-1, cs-array-2" }, 55_375, 229.893],
  ["the site and one of its arrays, which counts once", { Quantity: 2, For: "cs-array-1,Cold Store" }, 55_375, 229.893],
  ["a list of which the plan has one alone: a price of that one", { Quantity: 1, For: "cs-array-1, cs-array-9, " }, 27_687.5, 229.893],
  ["a service: no price a TB", { Quantity: 1, For: "cs-array-1", Kind: "service" }, 27_687.5, null],
  ["what is no array of the plan: no price a TB", { Kind: "array", For: "cs-array-9" }, 27_687.5, null],
])("a row of the quote for %s", async (_, cells, price, perTb) => {
  const [sell, tb] = await priced(cells);
  expect(sell).toBe(price);
  if (perTb === null) expect(tb).toBeNull();
  else expect(tb).toBeCloseTo(perTb, 3);
});

test.each<[string, Readonly<Record<string, Scalar>>, number]>([
  ["JPY has no decimals (ISO 4217)", { Currency: "jpy " }, 27_688],
  ["KWD has three (ISO 4217)", { Currency: "KWD", Cost: 22_150.0009 }, 27_687.501],
  ["F is a part of codes without decimals, and none itself: two", { Currency: "F" }, 27_687.5],
])("a price is rounded to the decimals of its currency: %s", async (_, cells, price) => {
  expect((await priced({ Kind: "array", For: "cs-array-1", Quantity: 1, Cost: 22_150, ...cells }))[0]).toBe(price);
});
