import { lineNet, smallestAmount, totalsOf } from "../../src/planning/pricing";
import { exactDecimal } from "../../src/planning/quantity";

/** Lines as quantity, price and rate of tax in percent. */
type Lines = readonly (readonly [quantity: number, price: number, percent: number])[];

function totals(currency: string, lines: Lines) {
  const smallest = smallestAmount(currency);
  const amounts = lines.map(([quantity, price, percent]) => ({
    net: lineNet(exactDecimal(quantity), exactDecimal(price), exactDecimal(0), smallest),
    taxRate: exactDecimal(percent).div(100),
  }));
  const { byRate, net, tax, gross } = totalsOf(amounts, smallest);
  return {
    lines: amounts.map((one) => one.net.toNumber()),
    byRate: byRate.map((one) => [one.taxRate.times(100).toNumber(), one.net.toNumber(), one.tax.toNumber()]),
    net: net.toNumber(), tax: tax.toNumber(), gross: gross.toNumber(),
  };
}

describe("CEN/TC 434, example invoices of EN 16931 in UBL (ConnectingEurope/eInvoicing-EN16931, ubl/examples)", () => {
  test("ubl-tc434-example1: twenty lines of groceries, one given back, at 6 % and 21 %", () => {
    const lines: Lines = [
      [2, 9.95, 6], [1, 9.85, 6], [1, 8.29, 6], [2, 7.23, 6], [1, 35, 6], [1, 35, 6], [1, 10.65, 6], [1, 1.55, 6], [3, 4.79, 6], [1, 8.29, 6],
      [2, 8.29, 6], [1, 9.95, 6], [2, 1.65, 6], [1, 10.8, 21], [1, 3.9, 6], [2, 3.8, 21], [2, 4.67, 21], [1, 18.63, 21], [6, 17.02, 6], [6, -18.33, 6],
    ];
    expect(totals("EUR", lines)).toEqual({
      lines: [19.9, 9.85, 8.29, 14.46, 35, 35, 10.65, 1.55, 14.37, 8.29, 16.58, 9.95, 3.3, 10.8, 3.9, 7.6, 9.34, 18.63, 102.12, -109.98],
      byRate: [[6, 183.23, 10.99], [21, 46.37, 9.74]],
      net: 229.6, tax: 20.73, gross: 250.33,
    });
  });

  test("ubl-tc434-example4: three lines in Danish crowns at 25 % and 12 %", () => {
    expect(totals("DKK", [[1000, 1, 25], [100, 5, 25], [500, 5, 12]])).toEqual({
      lines: [1000, 500, 2500], byRate: [[12, 2500, 300], [25, 1500, 375]], net: 4000, tax: 675, gross: 4675,
    });
  });

  test("ubl-tc434-example8: prices of a hundred-thousandth, tax on the sum and not on each line", () => {
    // The lines that name no quantity of which the price is: of the others the amount is given.
    const lines: Lines = [[16_000, 0.0088, 21], [16_000, 0.00101, 21], [1, 167.64, 21], [58, 1.53, 21], [1, 36.75, 21], [1, 56.5, 21], [1, 83.34, 21], [1, 190.31, 21], [1, 64.21, 21], [1, 64.46, 21]];
    expect(totals("EUR", lines)).toMatchObject({ lines: [140.8, 16.16, 167.64, 88.74, 36.75, 56.5, 83.34, 190.31, 64.21, 64.46], byRate: [[21, 908.91, 190.87]], gross: 1099.78 });
  });
});

describe("EN 16931-1, rules of calculation", () => {
  test("BR-CO-17: the tax of a rate is rounded once, on the sum of its lines", () => {
    // Three lines of 0.33 at 5 %: 0.0495 of the sum is 0.05, three times 0.0165 rounded would be 0.06.
    expect(totals("EUR", [[1, 0.33, 5], [1, 0.33, 5], [1, 0.33, 5]])).toMatchObject({ byRate: [[5, 0.99, 0.05]], tax: 0.05, gross: 1.04 });
  });

  test("BR-CO-10, BR-CO-13: the net amount is the sum of the lines as they were rounded", () => {
    // Half a cent is a cent on each of three lines; the sum of 0.015 would be 0.02.
    expect(totals("EUR", [[1, 0.005, 0], [1, 0.005, 20], [1, 0.005, 20]])).toMatchObject({ lines: [0.01, 0.01, 0.01], net: 0.03 });
  });

  test("BR-CO-14, BR-CO-15: tax is the sum over the rates, and gross is net and tax; 0 % is a rate of its own", () => {
    expect(totals("EUR", [[1, 100, 0], [1, 100, 20], [1, 50, 20]])).toMatchObject({ byRate: [[0, 100, 0], [20, 150, 30]], net: 250, tax: 30, gross: 280 });
  });
});
