import { issuedPrintout, nextRevision, offerPrintout, planCosts, planOfferSheet } from "../../../src/planning/offer";
import { PlanModel } from "../../../src/planning/plan/model";
import { cellText, type Printout } from "../../../src/planning/printouts";
import type { CellValue, WorkbookSnapshot } from "../../../src/sheet";
import { sample, workbookWith, type EditableRows } from "../../support/plan-rows";
import { snapshotOf, withCell } from "../../support/plain-workbook";
import { lookFaults } from "../../support/sheet-look";

const [madeAt, today] = ["2026-06-01 10:00", "2026-06-01"];
const modelOf = (rows: EditableRows) => new PlanModel(workbookWith(rows));
const printed = (rows: EditableRows, name = "TML-26-014") => offerPrintout(modelOf(rows), name, 1, madeAt, today);
const shown = ({ blocks }: Printout, title: string) => blocks.find((one) => one.title === title)?.lines.map((line) => line.map(cellText)) ?? null;

describe("what is sent out of an offer", () => {
  const printout = printed(sample());

  test("is its lines with their prices, whose the sites are, and until when it can be accepted", () => {
    expect(printout).toMatchObject({ title: "Offer TML-26-014, revision 1", facts: "For Thornmere Map Library, made 2026-06-01 10:00", standing: "No last day is named.", paper: "A4" });
    // 21,400 / 0.78; 15,900 / 0.78; 22,150 / 0.8; the same less 2 %; 1,850 / 0.7, each rounded to cents.
    expect(shown(printout, "Offered, in EUR")).toEqual([
      ["Two Alder 24, prepared", "Reading Room", "", "2", "27,435.90", "", "20%", "54,871.80"],
      ["Two Rowan 12, prepared", "Bindery", "", "2", "20,384.62", "", "20%", "40,769.24"],
      ["Alder 24, prepared", "cs-array-1", "", "1", "27,687.50", "", "20%", "27,687.50"],
      ["Alder 24, prepared", "cs-array-2", "", "1", "27,687.50", "2%", "20%", "27,133.75"],
      ["Installation and handover", "", "", "3", "2,642.86", "", "20%", "7,928.58"],
    ]);
    const rows = sample();
    rows.quote[3]!.validUntil = "2026-07-31";
    rows.quote[4]!.validUntil = "2026-06-30";
    expect(printed(rows).standing).toBe("It can be accepted until 2026-06-30.");
  });

  test("names the firm that makes it, where Settings does", () => {
    const rows = sample();
    rows.settings = [{ setting: "Firm", value: "Larkfield Storage" }];
    expect(printed(rows)).toMatchObject({
      facts: "From Larkfield Storage, for Thornmere Map Library, made 2026-06-01 10:00",
      signatures: ["Accepted for Thornmere Map Library, name and date", "For Larkfield Storage, name and date"],
    });
  });

  test("is added up by rate of tax; what is optional stands apart with its own tax", () => {
    // The five lines are 158,390.87, and a fifth of that 31,678.174.
    expect(shown(printout, "Totals in EUR")).toEqual([["Tax 20%", "158,390.87", "31,678.17", "190,069.04"], ["Total", "158,390.87", "31,678.17", "190,069.04"]]);
    expect(shown(printout, "Optional, in EUR")).toEqual([["Call-out within a working day", "", "3", "1", "6,000.00", "", "20%", "6,000.00", "1,200.00", "7,200.00"]]);
  });

  test("has the capacity to hosts of each array, and over it the price of a TB of all and of the arrays alone", () => {
    // Two copies within Reading Room and within Bindery leave half of 129.6 TB each; the Cold Store has a pool without copies: 120.44 TB each.
    const capacity = shown(printout, "Capacity to hosts")!;
    expect(capacity.map(([array, , , terabytes]) => `${array!} ${terabytes!}`)).toEqual([
      "rr-array-1 64.8", "rr-array-2 64.8", "bi-array-1 64.8", "bi-array-2 64.8", "cs-array-1 120.44", "cs-array-2 120.44", "Together 500.07",
    ]);
    // 158,390.87 and 150,462.29 over 500.072727 TB.
    expect(shown(printout, "Price of a TB to hosts")).toEqual([["All that is offered", "316.74"], ["The arrays alone", "300.88"]]);
  });

  test("is apart in each currency, in its decimals, and then without a price of a TB", () => {
    const rows = sample();
    Object.assign(rows.quote[4]!, { currency: "jpy", cost: 300_000 });
    const apart = printed(rows);
    expect(shown(apart, "Totals in JPY")!.at(-1)).toEqual(["Total", "1,285,713", "257,143", "1,542,856"]);
    expect(shown(apart, "Totals in EUR")!.at(-1)![1]).toBe("150,462.29");
    expect(shown(apart, "Price of a TB to hosts")).toBeNull();
  });

  test("says rates as they are reckoned with: New York City's sales tax is 8.875 % (from memory), and 8.88 % of a million is 50 more", () => {
    const rows = sample();
    rows.quote = [{ item: "Arrays", offer: "A-1", quantity: 1, cost: 1_000_000, margin: 0, discount: 0.00125, currency: "USD", taxRate: 0.08875 }];
    // 1,000,000 less 1,250 is 998,750; 8.875 % of it is 88,639.0625.
    expect(shown(printed(rows, "A-1"), "Offered, in USD")).toEqual([["Arrays", "", "", "1", "1,000,000.00", "0.125%", "8.875%", "998,750.00"]]);
    expect(shown(printed(rows, "A-1"), "Totals in USD")![0]).toEqual(["Tax 8.875%", "998,750.00", "88,639.06", "1,087,389.06"]);
  });

  test("says nothing of what it costs the firm", () => {
    const text = JSON.stringify(printout);
    expect(text).not.toMatch(/cost|margin/i);
    for (const secret of ["21400", "21,400", "15900", "22150", "1850", "4200", "0.22", "22%"]) expect(text).not.toContain(secret);
  });
});

describe("nothing is issued", () => {
  test.each<[string, (rows: EditableRows) => void, string]>([
    [
      "of an offer that no row is in", ({ quote }) => quote.forEach((row) => (row.offer = null)),
      'No row of Quote is in the offer "TML-26-014". Write its number into Offer of the rows that belong to it.',
    ],
    ["of one by another number", ({ quote }) => quote.forEach((row) => (row.offer = "X-1")), 'No row of Quote is in the offer "TML-26-014". The quote has X-1.'],
    ["with a row without a cost", ({ quote }) => void (quote[1]!.cost = null), '"Two Rowan 12, prepared" in row 6 of Quote has no price. Write its Cost, or take it out of the offer TML-26-014.'],
    ["with half a piece", ({ quote }) => void (quote[4]!.quantity = 2.5), "Quantity 2.5 is no count. Write a whole number. It stands in row 9 of Quote, in the offer TML-26-014."],
    [
      "with a margin over the price", ({ quote }) => void (quote[1]!.margin = 1.2),
      "Margin is 1.2: is it 120% or 1.2%? Write a number from 0 to 1, or a percentage. It stands in row 6 of Quote, in the offer TML-26-014.",
    ],
    [
      "with a margin of the whole price", ({ quote }) => void (quote[1]!.margin = 1),
      'Margin of "Two Rowan 12, prepared" in row 6 of Quote is 100%, and no price has its cost beside that. Write one below.',
    ],
    [
      "less a discount that cannot be read", ({ quote }) => Object.assign(quote[0]!, { discount: "some" }),
      'Discount "some" is not a share. Write a number such as 0.2, or a percentage such as 20%. It stands in row 5 of Quote',
    ],
    ["at a tax rate that cannot be read", ({ quote }) => Object.assign(quote[5]!, { taxRate: "0,2" }), 'Tax rate "0,2" has a comma. Write 0.2. It stands in row 10 of Quote'],
    ["until a day that is none", ({ quote }) => void (quote[2]!.validUntil = "31.8.2026"), 'Valid until "31.8.2026" is no date. Write it as 2026-05-31. It stands in row 7 of Quote'],
    ["in no currency", ({ quote }) => void (quote[0]!.currency = null), '"Two Alder 24, prepared" in row 5 of Quote is in no currency. Write one such as EUR.'],
    ["in a sign of money", ({ quote }) => void (quote[0]!.currency = "€"), '"Two Alder 24, prepared" in row 5 of Quote is in "€", which is no code of three letters. Write one such as EUR.'],
    [
      "with a row that does not say what it is", ({ quote }) => void (quote[1]!.item = null),
      "Row 6 of Quote has no item, and the customer would not know what it is. Write it, or take the row out of the offer TML-26-014.",
    ],
    [
      "with a row without a tax rate among others that have one: every line has its category of tax (EN 16931-1, BR-CO-04)", ({ quote }) => void (quote[2]!.taxRate = null),
      '"Alder 24, prepared" in row 7 of Quote has no tax rate, and others of the offer TML-26-014 have one. Write it, or 0% where there is none.',
    ],
    ["after its last day", ({ quote }) => void (quote[0]!.validUntil = "2026-05-31"), "Offer TML-26-014 ended on 2026-05-31. Write a new last day into Valid until of its rows."],
  ])("%s", (_, change, sentence) => {
    const rows = sample();
    change(rows);
    expect(() => printed(rows)).toThrow(sentence);
  });

  test("while the offer of a row cannot be read: it may belong to any", () => {
    const workbook = workbookWith(sample());
    const { values } = workbook.sheets.find(({ name }) => name === "Quote")!;
    const broken = new PlanModel(withCell(workbook, "Quote", 5, values[3]!.indexOf("Offer"), { error: "#N/A" }));
    expect(() => offerPrintout(broken, "TML-26-014", 1, madeAt, today)).toThrow("Offer shows #N/A. Mend that cell first. It stands in row 6 of Quote, and may be in the offer TML-26-014.");
  });
});

/** The plan with the sheet of a first revision in it. */
function issued(rows = sample()): WorkbookSnapshot {
  const model = modelOf(rows);
  const sheet = planOfferSheet(model, offerPrintout(model, "tml-26-014", 1, madeAt, today));
  return { sheets: [...model.workbook.sheets, ...snapshotOf([sheet]).sheets] };
}

describe("the sheet of an offer", () => {
  test("is values alone, on the plan's paper, under a name that a sheet can have and none has", () => {
    const rows = sample();
    rows.quote.forEach((row) => (row.offer = "TML/26:14"));
    const model = modelOf(rows);
    const sheet = planOfferSheet(model, offerPrintout(model, "TML/26:14", 3, madeAt, today));
    expect(sheet.name).toBe("Offer TML-26-14 r3");
    expect(sheet.rows.flat().filter(({ formula }) => formula !== undefined)).toEqual([]);
    expect(sheet.print).toMatchObject({ paper: "A4", orientation: "landscape", fitToWidth: true });
    expect(lookFaults(sheet)).toEqual([]);
    const taken = new PlanModel({ sheets: [...model.workbook.sheets, ...snapshotOf([sheet]).sheets] });
    expect(planOfferSheet(taken, offerPrintout(model, "TML/26:14", 3, madeAt, today)).name).toBe("Offer TML-26-14 r3 2");
  });

  test.each([["TML\n26", "Offer TML 26 r1"], ["TML\u000726", "Offer TML-26 r1"]])("of the number %j has a name that a file can hold, and is known again", (number, name) => {
    const rows = sample();
    rows.quote.forEach((row) => (row.offer = number));
    const model = modelOf(rows);
    const sheet = planOfferSheet(model, offerPrintout(model, number, 1, madeAt, today));
    expect(sheet.name).toBe(name);
    expect(nextRevision(snapshotOf([sheet]), model.quote.find(number)!)).toBe(2);
  });

  test("counts revisions on from what Quote or an earlier sheet knows", () => {
    const next = (workbook: WorkbookSnapshot) => nextRevision(workbook, new PlanModel(workbook).quote.find("TML-26-014")!);
    expect([next(workbookWith(sample())), next(issued())]).toEqual([1, 2]);
    const rows = sample();
    rows.quote[0]!.revision = 4;
    expect([next(workbookWith(rows)), next(issued(rows))]).toEqual([5, 5]);
  });
});

describe("the customer's file", () => {
  const at = (workbook: WorkbookSnapshot, text: string) => {
    const sheet = workbook.sheets.at(-1)!;
    const row = sheet.values.findIndex((line) => line.includes(text));
    return { row, column: sheet.values[row]!.indexOf(text) };
  };
  const changed = (cell: CellValue) => {
    const workbook = issued();
    const { row } = at(workbook, "Installation and handover");
    return withCell(workbook, "Offer TML-26-014 r1", row, 7, cell);
  };

  test("is what was issued, to the minute, whoever it is from and for", () => {
    expect(issuedPrintout(new PlanModel(issued()), "TML-26-014")).toEqual(printed(sample()));
    const nobodys = sample();
    for (const site of nobodys.sites) site.customer = null;
    expect(issuedPrintout(new PlanModel(issued(nobodys)), "TML-26-014").facts).toBe("Made 2026-06-01 10:00");
  });

  test("is not made of a sheet in which somebody typed, nor of a quote that was changed since", () => {
    expect(() => issuedPrintout(new PlanModel(changed(7900)), "TML-26-014")).toThrow(
      /^Offer TML-26-014, revision 1 differs in H\d+ from what the quote gives now. Issue it again, or undo what was changed.$/,
    );
    expect(() => issuedPrintout(new PlanModel(withCell(issued(), "Offer TML-26-014 r1", 4, 14, "we paid 21,400")), "TML-26-014")).toThrow("differs in O5");
    const dearer = sample();
    dearer.quote[0]!.cost = 21500;
    const sheet = issued().sheets.at(-1)!;
    expect(() => issuedPrintout(new PlanModel({ sheets: [...workbookWith(dearer).sheets, sheet] }), "TML-26-014")).toThrow("Issue it again");
    expect(() => issuedPrintout(modelOf(sample()), "TML-26-014")).toThrow("Offer TML-26-014 has no sheet yet. Issue it first.");
  });

  test("can still be made when the last day of the offer has gone", () => {
    const rows = sample();
    rows.quote[0]!.validUntil = "2026-06-01";
    expect(issuedPrintout(new PlanModel(issued(rows)), "TML-26-014").standing).toBe("It can be accepted until 2026-06-01.");
  });
});

test("costs are taken from the price list where they differ, with list and day, and left where the currency is another", () => {
  const rows = sample();
  rows.quote[0]!.part = "AL-24";
  rows.quote[5]!.currency = "USD";
  const price = { currency: "EUR", list: "Spring", day: "2026-03-01" };
  rows.prices.push({ part: "al-24", cost: 21400, ...price }, { part: "Installation and handover", cost: 1900, ...price }, { part: "Call-out within a working day", cost: 1, ...price });
  const { writes } = planCosts(modelOf(rows));
  expect(writes.map(({ sheet, row, value }) => [sheet, row + 1, value])).toEqual([
    ["Quote", 5, "Spring"], ["Quote", 5, 46_082], ["Quote", 9, 1900], ["Quote", 9, "Spring"], ["Quote", 9, 46_082],
  ]);
  expect(planCosts(modelOf(sample())).writes).toEqual([]);
});

test("a cost that a formula works out is not written over, nor has it another list beside it", () => {
  const rows = sample();
  rows.quote[0]!.part = "AL-24";
  rows.prices.push({ part: "AL-24", cost: 20900, currency: "EUR", list: "Spring", day: "2026-03-01" });
  const { sheets } = workbookWith(rows);
  const column = sheets.find(({ name }) => name === "Quote")!.values[3]!.indexOf("Cost");
  const withFormula = sheets.map((sheet) => {
    if (sheet.name !== "Quote") return sheet;
    const formulas = sheet.values.map((line, at) => line.map((_, one) => (at === 4 && one === column ? "=20000*1.07" : (sheet.formulas[at]?.[one] ?? null))));
    return { ...sheet, formulas };
  });
  expect(planCosts(new PlanModel({ sheets })).writes).toHaveLength(3);
  expect(planCosts(new PlanModel({ sheets: withFormula })).writes).toEqual([]);
});
