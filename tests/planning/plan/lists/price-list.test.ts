import { planPriceList, proposeMatches, questionOf, readList, type PriceList } from "../../../../src/planning/plan/lists";
import { PlanModel } from "../../../../src/planning/plan/model";
import { tableKeys, tables, type TableRow } from "../../../../src/planning/plan/schema";
import { planTables } from "../../../../src/planning/plan/set-up";
import type { CellValue, WorkbookSnapshot } from "../../../../src/sheet";
import { carryOut } from "../../../support/plan-changes";
import { snapshotOf } from "../../../support/plain-workbook";

const standing: readonly TableRow<"prices">[] = [
  { part: "AL-24", description: "Alder 24", cost: 20000, currency: "EUR", list: "Winter", day: "2026-01-05" },
  { part: "RO-12", description: "Rowan 12", cost: 15000, currency: "EUR", list: "Winter", day: "2026-01-05" },
];
const bookOf = (prices: readonly TableRow<"prices">[] = standing): WorkbookSnapshot => snapshotOf(planTables({ sheets: [] }, tableKeys, { prices }));

function bring(cells: CellValue[][], more: Partial<PriceList> = {}, book = bookOf()) {
  const [list, model] = [readList(cells), new PlanModel(book)];
  const plan = planPriceList(model, { list, matches: proposeMatches(model, "prices", list), name: "Spring", day: "2026-03-01", ...more });
  return { ...plan, taken: () => carryOut(book, plan.changes) };
}

const pricesOf = (book: WorkbookSnapshot) => new PlanModel(book).rows("prices").map(({ part, cost, list, day }) => [part, cost, list, day]);
const headers: CellValue[] = ["Article no.", "Text", "Net price", "Currency"];

test("a price list in the firm's own words changes what stands, adds the rest, and list and day stand beside each of its prices", () => {
  const { taken, added, updated, changed, refused, stop } = bring([["Prices of the spring"], headers, ["RO-12", "Rowan 12", 15750, "EUR"], ["SV-1", "Moving", 400, "EUR"]]);
  expect({ added, updated, refused, stop }).toEqual({ added: 1, updated: 1, refused: [], stop: null });
  expect(changed).toEqual([{ part: "RO-12", before: 15000, after: 15750 }]);
  expect(pricesOf(taken())).toEqual([["AL-24", 20000, "Winter", "2026-01-05"], ["RO-12", 15750, "Spring", "2026-03-01"], ["SV-1", 400, "Spring", "2026-03-01"]]);
});

test("what changes most for what it was stands first", () => {
  const { changed } = bring([headers, ["AL-24", "", 21000, "EUR"], ["ro-12", "", 12000, "EUR"]]);
  expect(changed.map(({ part }) => part)).toEqual(["RO-12", "AL-24"]);
});

describe("nothing is half taken:", () => {
  test.each<[string, CellValue[][], string]>([
    ["a part that stands twice", [["AL-24", "", 21000, "EUR"], ["al-24", "", 22000, "EUR"]], 'Row 3 has the key "al-24", which stood in the list before, and is left out.'],
    ["a cost that is no number", [["AL-24", "", "on request", "EUR"], ["RO-12", "", 1, "EUR"]], 'Row 2: Cost "on request" is not a number. Write digits, such as 42 or 0.5.'],
    ["a cost below nothing", [["AL-24", "", -5, "EUR"]], "Row 2: Cost is -5. Write a number from 0 to 1000000000000, such as 450."],
    ["a price without a part", [[null, "Rowan", 15000, "EUR"], ["AL-24", "", 21000, "EUR"]], "Row 2 has no key, and is left out."],
  ])("%s", (_, rows, sentence) => {
    const { taken, refused, stop, added, updated } = bring([headers, ...rows]);
    expect(refused).toEqual([sentence]);
    expect(stop).toBe("Nothing of the list is taken while any of its rows cannot be: mend them in the list, or leave them out of it.");
    expect([added, updated]).toEqual([0, 0]);
    expect(pricesOf(taken())).toEqual(pricesOf(bookOf()));
  });

  test("a list whose costs or parts go nowhere, that has no name, or no day", () => {
    const rows: CellValue[][] = [["Article no.", "Text", "Amount due"], ["AL-24", "", "21000"]];
    expect(() => bring(rows)).toThrow("No column of the list goes to Cost. Choose the one in which the prices stand.");
    expect(() => bring([["Colour", "Net price"], ["red", 21000], ["blue", 1]])).toThrow(
      "Rows are to be found by Part, and no column of the list goes there. Choose one, or let all rows be new.",
    );
    expect(() => bring([headers, ["AL-24", "", 1, "EUR"]], { name: " " })).toThrow("The list has no name. Write one, such as Spring 2026.");
    expect(() => bring([headers, ["AL-24", "", 1, "EUR"]], { day: "1.3.2026" })).toThrow('The day "1.3.2026" of the list is no date. Write it as 2026-05-31.');
  });
});

test("headings without a cost are left out and counted; so is a total at the end", () => {
  const { refused, added, stop } = bring([headers, ["Arrays", null, null, null], ["XX-1", "x", 5, "EUR"], ["Work", null, null, null], ["XX-2", "y", 6, "EUR"], ["Total", null, 11, null]]);
  expect({ added, stop }).toEqual({ added: 2, stop: null });
  expect(refused).toEqual(["Row 6 looks like a total and is left out.", "2 rows without a cost are left out: row 2 is the first."]);
});

test("decimal commas are read where the column tells them, and asked about where it does not", () => {
  const { taken } = bring([headers, ["AL-24", "", "20.500,00", "EUR"], ["RO-12", "", "15.100,5", "EUR"], ["SV-1", "", "1.250", "EUR"]]);
  expect(pricesOf(taken()).map(([, cost]) => cost)).toEqual([20500, 15100.5, 1250]);
  expect(questionOf(tables.prices.columns.cost, ["1.250", "20.500"])).toMatchObject({ choices: ["decimal point", "decimal comma"] });
  // Unasked, nobody guesses.
  expect(bring([headers, ["AL-24", "", "20.500", "EUR"]]).refused).toEqual([
    'Row 2: Cost "20.500" can be read in two ways. Write it without a mark, or with one or two decimals.',
  ]);
});

test("a price that comes in another currency is told, and its figure is not held against the one before", () => {
  const { changed, refused, taken } = bring([headers, ["AL-24", "", 20000, "USD"], ["RO-12", "", 15750, "eur"]]);
  expect(changed).toEqual([{ part: "RO-12", before: 15000, after: 15750 }]);
  expect(refused).toEqual(["In another currency than before: AL-24, from EUR to USD. See that each is meant."]);
  expect(new PlanModel(taken()).rows("prices").map(({ currency }) => currency)).toEqual(["USD", "eur"]);
});

test("thousands may be parted by a blank of any kind, as the SI brochure has it (9th edition, 5.4.4), or by an apostrophe; anything else is no number", () => {
  const costOf = (cost: string) => bring([headers, ["AL-24", "", cost, "EUR"]]);
  for (const cost of ["1 234,56", "1\u00a0234,56", "1\u202f234,56", "1\u2009234.56", "1'234.56", "1\u2019234.56"]) expect([cost, pricesOf(costOf(cost).taken())[0]![1]]).toEqual([cost, 1234.56]);
  expect(["12 345 678", "1'234"].map((cost) => pricesOf(costOf(cost).taken())[0]![1])).toEqual([12_345_678, 1234]);
  for (const cost of ["12 34", "1 2,50", "12 / 34"]) expect(costOf(cost).refused).toEqual([`Row 2: Cost "${cost}" is not a number. Write digits, such as 42 or 0.5.`]);
});

test("a list that is older than prices that stand says so", () => {
  expect(bring([headers, ["RO-12", "", 15000, "EUR"]], { day: "2025-06-01" }).refused).toEqual([
    "2 prices in the table are of a later day than this list, up to 2026-01-05. See that it is not an old one.",
  ]);
});

test("a list that has columns for its day and its name keeps them", () => {
  const { taken } = bring([[...headers, "List", "Day"], ["RO-12", "", 15000, "EUR", "Special", "2026-02-02"]]);
  expect(pricesOf(taken())[1]).toEqual(["RO-12", 15000, "Special", "2026-02-02"]);
});

test("10,000 rows are taken in one go, and brought in again change nothing", () => {
  const rows = Array.from({ length: 10_000 }, (_, at): CellValue[] => [`P-${at}`, `Part ${at}`, at + 0.5, "EUR"]);
  const first = bring([headers, ...rows], {}, bookOf([]));
  const pricesIn = ({ changes }: typeof first) => changes.writes.filter(({ sheet }) => sheet === "Price list").length;
  expect([first.added, first.stop, pricesIn(first)]).toEqual([10_000, null, 60_000]);
  const stands = bookOf(rows.map(([part, description, cost, currency]) => ({ part, description, cost, currency, list: "Spring", day: "2026-03-01" }) as TableRow<"prices">));
  const dearer = rows.map(([part, text, cost, currency], at): CellValue[] => [part!, text!, at === 7_000 ? 1 : cost!, currency!]);
  const again = bring([headers, ...dearer], {}, stands);
  expect(again.changed).toEqual([{ part: "P-7000", before: 7000.5, after: 1 }]);
  expect(pricesIn(again)).toBe(1);
});
