import { designsInPlan, planDesign, planQuote, type QuoteDetails } from "../../../src/planning/options";
import { PlanModel } from "../../../src/planning/plan/model";
import { planSetUp } from "../../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../../src/sheet";
import { filledOptions, threeDesigns, type OptionInputs } from "../../support/options-sheet";
import { carryOut } from "../../support/plan-changes";
import { snapshotOf } from "../../support/plain-workbook";

const details: QuoteDetails = { offer: "BI-7", taxRate: "20%", validUntil: "2026-07-31" };
const today = "2026-06-01";

/** A plan into which one design of the sheet of options went, at the site Bindery. */
function planned(design = "Two arrays, mirrored", inputs: OptionInputs = {}): WorkbookSnapshot {
  const { sheets } = snapshotOf(planSetUp({ sheets: [] }, { models: [{ model: "Elm 24", units: 4, watts: 480 }] }));
  const workbook = { sheets: [...sheets, ...filledOptions({ ...threeDesigns, Margin: 0.25, ...inputs }).sheets.slice(-1)] };
  return carryOut(workbook, planDesign(workbook, design, "Bindery"));
}

const quoted = (workbook: WorkbookSnapshot, more: Partial<QuoteDetails> = {}, pool = "Bindery Two arrays, mirrored"): WorkbookSnapshot =>
  carryOut(workbook, planQuote(workbook, pool, { ...details, ...more }, today));

describe("a design in the plan as rows of the quote", () => {
  const model = new PlanModel(quoted(planned()));

  test("brings its arrays and support over the years with all that the sheet of options knows", () => {
    const shared = { for: "Bindery", quantity: 2, margin: 0.25, currency: "EUR", offer: "BI-7", taxRate: 0.2, validUntil: "2026-07-31" };
    expect(model.rows("quote")).toMatchObject([
      { ...shared, item: "Elm 24 with 24 drives of 12 TB", kind: "array", cost: 39_000, part: "Elm 24" },
      // Five years at 2,800.
      { ...shared, item: "Support for Elm 24", kind: "support", cost: 14_000, years: 5 },
    ]);
  });

  test("comes to what the sheet of options says: 39,000 / 0.75 each, over 192 TB to hosts", () => {
    const offer = model.quote.find("BI-7")!;
    expect(offer.byCurrency[0]!.lines.map(({ net }) => net.toNumber())).toEqual([104_000, 37_333.34]);
    expect(offer.pricePerTb!.hardware.toDP(2).toNumber()).toBe(541.67);
  });

  test("names the arrays one by one where their site has others", () => {
    const workbook = planned();
    const other = carryOut(workbook, planDesign(workbook, "Single parity", "Bindery"));
    const model = new PlanModel(quoted(other));
    const [row] = model.rows("quote");
    expect(row).toMatchObject({ for: "Bindery Two arrays mirrored 1, Bindery Two arrays mirrored 2", quantity: 2 });
    // The names are found again in the list, so the offer has its price of a TB.
    expect(model.quote.arraysOf(row!)).toHaveLength(2);
    expect(model.quote.find("BI-7")!.pricePerTb!.hardware.toDP(2).toNumber()).toBe(541.67);
  });

  test("leaves out support that costs nothing, a margin that is not said is 0, and a design without a model goes by its name", () => {
    const bare = planned("Single parity", { Margin: null, "Support cost an array and year": [null, null, null], Model: [null, null, null] });
    expect(new PlanModel(quoted(bare, {}, "Bindery Single parity")).rows("quote")).toMatchObject([{ item: "Single parity with 12 drives of 16 TB", part: "", margin: 0, cost: 18_000 }]);
  });
});

test("designs are found in the plan by their pools, site by site", () => {
  const workbook = planned();
  const other = carryOut(workbook, planDesign(workbook, "Single parity", "Mill"));
  expect(designsInPlan(other).map(({ pool }) => pool)).toEqual(["Bindery Two arrays, mirrored", "Mill Single parity"]);
});

describe("nothing is quoted", () => {
  test.each<[string, Partial<QuoteDetails>, string]>([
    ["without a number of the offer", { offer: " " }, "Offer is empty. Write the number under which the rows are sent out together."],
    ["without a tax rate", { taxRate: "" }, "Tax rate is empty. Write it, such as 20%, or 0% where there is none."],
    ["at a tax rate above the price", { taxRate: "120%" }, "Tax rate"],
    ["until a day that is past", { validUntil: "2026-05-31" }, "Valid until 2026-05-31 is past. Write a later day, or leave it empty."],
    ["until what is no day", { validUntil: "soon" }, 'Valid until "soon" is no date. Write it as 2026-05-31.'],
  ])("%s", (_, more, sentence) => {
    expect(() => quoted(planned(), more)).toThrow(sentence);
  });

  test("of a design that is not in the plan, or not under that name", () => {
    const workbook = planned();
    const bare = { sheets: workbook.sheets.filter(({ name }) => name !== "Pools") };
    expect(() => quoted(bare)).toThrow("No design of the sheet of options stands in the plan with its pool. Choose Make plan rows first.");
    expect(() => quoted(workbook, {}, "Mill Single parity")).toThrow('"Mill Single parity" is no pool of a design in the plan. Choose Bindery Two arrays, mirrored.');
  });

  test("of a design whose cost is not said", () => {
    const workbook = planned("Two arrays, mirrored", { "Cost an array": [1, null, 1] });
    expect(() => quoted(workbook)).toThrow("Cost an array of Two arrays, mirrored is empty. What one array with its drives costs you.");
  });

  test("a second time in one offer, and in none; in another offer it is", () => {
    const once = quoted(planned());
    expect(() => quoted(once, { offer: "bi-7" })).toThrow(
      "Bindery Two arrays mirrored 1 is offered in row 5 of Quote already. Change that row, or write another number for the offer.",
    );
    expect(new PlanModel(quoted(once, { offer: "BI-8" })).rows("quote")).toHaveLength(4);
  });
});
