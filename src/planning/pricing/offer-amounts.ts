import { Decimal } from "../quantity";
import { roundToStep } from "./round-to-step";

/** What a line of an offer comes to without tax, and the share of it that is added as tax. */
export interface TaxedAmount {
  readonly net: Decimal;
  readonly taxRate: Decimal;
}

/** What the lines of one tax rate come to. */
export interface RateTotal extends TaxedAmount {
  readonly tax: Decimal;
}

/** What lines of one currency come to. */
export interface OfferTotals {
  /** In rising order of the rates. */
  readonly byRate: readonly RateTotal[];
  readonly net: Decimal;
  readonly tax: Decimal;
  readonly gross: Decimal;
}

/** Computes what a line comes to without tax: quantity times unit price, less the discount, rounded to the smallest amount of its currency. */
export function lineNet(quantity: Decimal, unitPrice: Decimal, discount: Decimal, smallest: Decimal): Decimal {
  return roundToStep(quantity.times(unitPrice).times(discount.neg().plus(1)), smallest);
}

/** Computes the margin that is left of an amount after its cost, as a share of the amount; null of nothing, which has no shares. */
export function realMargin(cost: Decimal, net: Decimal): Decimal | null {
  return net.isZero() ? null : cost.div(net).neg().plus(1);
}

/**
 * Adds lines of one currency up as EN 16931-1 adds up an invoice without allowances and charges: the net amount is the sum of the lines (BR-CO-10,
 * BR-CO-13), the tax of a rate is that rate of the sum of its lines and is rounded once (BR-CO-17), the tax is the sum over the rates (BR-CO-14),
 * and both together are the gross amount (BR-CO-15).
 */
export function totalsOf(lines: readonly TaxedAmount[], smallest: Decimal): OfferTotals {
  const sums = new Map<string, TaxedAmount>();
  for (const { net, taxRate } of lines) {
    const before = sums.get(taxRate.toString());
    sums.set(taxRate.toString(), { taxRate, net: before === undefined ? net : before.net.plus(net) });
  }
  const byRate = [...sums.values()]
    .sort((a, b) => a.taxRate.comparedTo(b.taxRate))
    .map(({ net, taxRate }): RateTotal => ({ net, taxRate, tax: roundToStep(net.times(taxRate), smallest) }));
  const [net, tax] = [sumOf(byRate.map((one) => one.net)), sumOf(byRate.map((one) => one.tax))];
  return { byRate, net, tax, gross: net.plus(tax) };
}

/** Adds amounts up; nothing is 0. */
export function sumOf(amounts: readonly Decimal[]): Decimal {
  return amounts.reduce((sum, amount) => sum.plus(amount), new Decimal(0));
}
