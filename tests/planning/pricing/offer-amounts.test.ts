import fc from "fast-check";
import { lineNet, realMargin, smallestAmount, sumOf, totalsOf } from "../../../src/planning/pricing";
import { exactDecimal } from "../../../src/planning/quantity";

const net = (quantity: number, price: number, discount: number, currency = "EUR") =>
  lineNet(exactDecimal(quantity), exactDecimal(price), exactDecimal(discount), smallestAmount(currency)).toNumber();

describe("what a line comes to", () => {
  test.each([
    ["without a discount", 3, 100.1, 0, "EUR", 300.3],
    ["half a cent goes up, which a double would lose: 1.005 lies below itself", 1, 2.01, 0.5, "EUR", 1.01],
    ["a third off", 3, 33.33, 0.333333333333333, "EUR", 66.66],
    ["all of it taken off", 2, 500, 1, "EUR", 0],
    ["whole yen", 1, 999, 0.05, "JPY", 949],
    ["thousandths of a dinar", 1, 0.999, 0.05, "KWD", 0.949],
  ])("%s", (_, quantity, price, discount, currency, amount) => {
    expect(net(quantity, price, discount, currency)).toBe(amount);
  });
});

test("the margin that is left of an amount after its cost; nothing has none, and below cost it is negative", () => {
  const left = (cost: number, amount: number) => realMargin(exactDecimal(cost), exactDecimal(amount))?.toNumber() ?? null;
  expect([left(75, 100), left(100, 100), left(120, 100), left(5, 0)]).toEqual([0.25, 0, -0.2, null]);
});

test("totals do not depend on the order of lines, and net and gross are sums of what is shown, to the cent", () => {
  const line = fc.record({ cents: fc.integer({ min: 0, max: 10_000_000 }), percent: fc.constantFrom(0, 5.5, 7, 19, 20, 21) });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 30 }), (lines) => {
      const amounts = lines.map(({ cents, percent }) => ({ net: exactDecimal(cents).div(100), taxRate: exactDecimal(percent).div(100) }));
      const [one, other] = [totalsOf(amounts, smallestAmount("EUR")), totalsOf([...amounts].reverse(), smallestAmount("EUR"))];
      expect(JSON.stringify(one)).toBe(JSON.stringify(other));
      expect(one.net.times(100).toNumber()).toBe(lines.reduce((sum, { cents }) => sum + cents, 0));
      expect(one.gross.toString()).toBe(sumOf(one.byRate.map((rate) => rate.net.plus(rate.tax))).toString());
      // Rounding each rate once is at most half a cent a rate.
      const exact = sumOf(amounts.map(({ net: amount, taxRate }) => amount.times(taxRate)));
      expect(one.tax.minus(exact).abs().toNumber()).toBeLessThanOrEqual(0.005 * one.byRate.length);
    }),
    { seed: 16_931 },
  );
});
