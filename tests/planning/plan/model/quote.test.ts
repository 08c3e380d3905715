import { PlanModel } from "../../../../src/planning/plan/model";
import type { Scalar } from "../../../../src/sheet";
import { sample, workbookWith } from "../../../support/plan-rows";

const euro = { offer: "A-1", quantity: 1, currency: "EUR", margin: 0 };

/** A plan of the arrays x1 to x4 of the site Mill, each of 30 TB (RAID 6 of 12 drives of 3 TB), in one pool of two copies where that is said. */
function quoteOf(lines: readonly Record<string, Scalar>[], acrossArrays: string | null = null) {
  const rows = sample();
  const pool = acrossArrays === null ? null : "Mill pool";
  rows.sites.push({ site: "Mill" });
  rows.pools.push({ pool: "Mill pool", acrossArrays });
  rows.arrays.push(...["x1", "x2", "x3", "x4"].map((array) => ({ array, site: "Mill", drives: 12, driveSize: "3 TB", scheme: "RAID 6", spares: 0, pool })));
  rows.quote = lines.map((line, at) => ({ item: `Line ${at + 1}`, ...euro, ...line }));
  return new PlanModel(workbookWith(rows)).quote;
}

const offerOf = (...args: Parameters<typeof quoteOf>) => quoteOf(...args).find("A-1")!;
const perTb = (...args: Parameters<typeof quoteOf>) => {
  const price = offerOf(...args).pricePerTb;
  return price === null ? null : { whole: price.whole.toDP(2).toNumber(), hardware: price.hardware.toDP(2).toNumber() };
};

describe("the price of a TB of an offer", () => {
  const mill = { kind: "array", for: "Mill", quantity: 4, cost: 4629.6 };

  test("of four arrays is that of one, and not four times as much", () => {
    // 4 x 4,629.60 over 4 x 30 TB is 154.32; over 30 TB it would be 617.28.
    expect(perTb([mill])).toEqual({ whole: 154.32, hardware: 154.32 });
    expect(perTb([{ ...mill, for: "x1", quantity: 1 }])).toEqual({ whole: 154.32, hardware: 154.32 });
  });

  test("is not given where a row counts other than the arrays that it is for", () => {
    expect(perTb([{ ...mill, for: "x1" }])).toBeNull();
    expect(perTb([{ ...mill, quantity: 2 }])).toBeNull();
  });

  test("counts installation in the whole and not in the hardware, and an array that two rows name once", () => {
    const lines: Record<string, Scalar>[] = [mill, { kind: "array", for: "x1", cost: 1200 }, { kind: "service", cost: 600, quantity: 2 }];
    // 18,518.40 and 1,200 over 120 TB, and with 1,200 for work.
    expect(perTb(lines)).toEqual({ whole: 174.32, hardware: 164.32 });
  });

  test("is that of a list of arrays and sites, each array once", () => {
    expect(perTb([{ ...mill, for: "x1, X2", quantity: 2 }])).toEqual({ whole: 154.32, hardware: 154.32 });
    expect(perTb([{ ...mill, for: "x1,Mill" }])).toEqual({ whole: 154.32, hardware: 154.32 });
    expect(perTb([{ ...mill, for: "x1, x2", quantity: 1 }])).toBeNull();
  });

  test("is over what hosts can store: two copies between the arrays leave half", () => {
    expect(perTb([mill], "2 copies")).toEqual({ whole: 308.64, hardware: 308.64 });
  });

  test("leaves out what is optional, the arrays too", () => {
    const optional: Record<string, Scalar>[] = [{ kind: "array", for: "x2", cost: 1, optional: "yes" }, { kind: "support", cost: 900, optional: "yes" }];
    expect(perTb([{ ...mill, for: "x1", quantity: 1 }, ...optional])).toEqual({ whole: 154.32, hardware: 154.32 });
  });

  test.each([
    ["two currencies", [{ cost: 1, currency: "USD" }]],
    ["a row without a price", [{ cost: null }]],
    ["arrays that the plan does not have", [{ kind: "array", for: "Attic", cost: 1 }]],
  ])("is not given over %s", (_, more) => {
    expect(perTb([mill])).not.toBeNull();
    expect(perTb([mill, ...more])).toBeNull();
  });

  test("is none of services alone", () => {
    expect(perTb([{ kind: "service", cost: 600 }])).toBeNull();
  });
});

describe("the amounts of an offer", () => {
  test("are those of its rows, without case, in the order of the quote; rows in no offer are in none", () => {
    const quote = quoteOf([{ cost: 1 }, { cost: 2, offer: "B-1" }, { cost: 3, offer: "a-1" }, { cost: 4, offer: null }]);
    expect(quote.offers().map(({ name, rows }) => [name, rows.map(({ item }) => item)])).toEqual([["A-1", ["Line 1", "Line 3"]], ["B-1", ["Line 2"]]]);
  });

  test("add up by rate of tax, discounts taken off, optional rows apart", () => {
    const { byCurrency: [euros], margin } = offerOf([
      { cost: 75, margin: 0.25, quantity: 3, discount: 0.1, taxRate: 0.2 },
      { cost: 50, margin: 0.5, taxRate: 0.05 },
      { cost: 10, quantity: 2, taxRate: 0.2, optional: "yes" },
    ]);
    // 3 x 100 less a tenth is 270; 100; 20 % of 270 and 5 % of 100.
    expect(euros!.totals.byRate.map(({ taxRate, net, tax }) => [taxRate, net, tax].map(Number))).toEqual([[0.05, 100, 5], [0.2, 270, 54]]);
    expect([euros!.totals.net, euros!.totals.tax, euros!.totals.gross].map(Number)).toEqual([370, 59, 429]);
    expect(euros!.optional.map(({ net }) => net.toNumber())).toEqual([20]);
    // 370 for a cost of 225 and 50.
    expect(margin!.toDP(6).toNumber()).toBe(0.256757);
  });

  test("stand apart in each currency, each to its own decimals", () => {
    const { byCurrency, margin } = offerOf([{ cost: 100.4, currency: "eur" }, { cost: 100.4, currency: "JPY" }, { cost: 1.0005, currency: "KWD" }]);
    expect(byCurrency.map(({ currency, totals }) => [currency, totals.net.toNumber()])).toEqual([["EUR", 100.4], ["JPY", 100], ["KWD", 1.001]]);
    expect(margin).toBeNull();
  });

  test("are not known of a row without quantity, cost or margin, nor of a margin of the whole price", () => {
    const { unpriced } = offerOf([{ cost: null }, { cost: 1, quantity: null }, { cost: 1, margin: null }, { cost: 1, margin: 1 }, { cost: 1 }]);
    expect(unpriced.map(({ item }) => item)).toEqual(["Line 1", "Line 2", "Line 3", "Line 4"]);
  });

  test("have the highest revision of the rows", () => {
    expect([offerOf([{ cost: 1 }]).revision, offerOf([{ cost: 1, revision: 2 }, { cost: 1, revision: 3 }]).revision]).toEqual([0, 3]);
  });
});
