// Price and release: what a terabyte costs, what a device costs to run, and which release computed a cell.
import manifest from "../../package.json";
import { energyCost, pricePerUnit, profitKinds, sellPrice } from "../planning/pricing";
import { exactDecimal } from "../planning/quantity";
import { answer } from "./support/answer";
import { readChoice } from "./support/choice";
import { readMoney, readMoneyOrZero, readProfit, readSizeIn, readStep } from "./support/money";
import { readNumber } from "./support/numbers";
import { readShare, readUnit } from "./support/quantities";

/**
 * Computes the price of one TB, or of one of another unit.
 * @customfunction UNITPRICE
 * @param price Price of the whole, such as 18000.
 * @param capacity Capacity it buys: a number in the unit, such as 40, or text such as "40 TB".
 * @param [unit] Unit to price, such as "TiB"; a bare capacity is in this unit too. Left out: "TB".
 * @returns Price of one unit, not rounded.
 */
export function unitprice(price: unknown, capacity: unknown, unit?: unknown): number {
  return answer("UNITPRICE", () => {
    const priced = readUnit(unit, "unit");
    return pricePerUnit(readMoney(price, "price"), readSizeIn(capacity, "capacity", priced)).toNumber();
  });
}

/**
 * Computes a selling price from a cost and a margin or a mark-up.
 * @customfunction SELLPRICE
 * @param cost What it costs, such as 75.
 * @param share Margin of the price or mark-up on the cost, such as 25%.
 * @param [kind] "margin", a share of the price, or "markup", a share of the cost. Left out: "margin".
 * @param [step] Rounds to multiples of this, halves away from zero, such as 0.05. Left out: not rounded.
 * @returns Selling price.
 */
export function sellprice(cost: unknown, share: unknown, kind?: unknown, step?: unknown): number {
  return answer("SELLPRICE", () => {
    const profit = readChoice(kind, "kind", profitKinds);
    return sellPrice(readMoneyOrZero(cost, "cost"), readProfit(share, "share", profit), profit, readStep(step, "step")).toNumber();
  });
}

/**
 * Computes what electrical power costs that is drawn all the time.
 * @customfunction ENERGYCOST
 * @param watts Power drawn in watts, such as 450.
 * @param tariff Price of one kWh, such as 0.25.
 * @param [years] Years of 8760 hours, such as 5. Left out: 1.
 * @param [overhead] Share added for cooling, such as 0.5 for a site that uses 1.5 W a watt. Left out: 0.
 * @returns Cost, not rounded.
 */
export function energycost(watts: unknown, tariff: unknown, years?: unknown, overhead?: unknown): number {
  return answer("ENERGYCOST", () =>
    energyCost(
      exactDecimal(readNumber(watts, "watts", { above: 0, max: 1e9, example: 450 })),
      exactDecimal(readNumber(tariff, "tariff", { above: 0, max: 1e9, example: 0.25 })),
      exactDecimal(readNumber(years, "years", { above: 0, max: 100, default: 1, example: 5 })),
      exactDecimal(readShare(overhead, "overhead", { default: 0 })),
    ).toNumber(),
  );
}

/**
 * Tells which release of Baywright computed this cell.
 * @customfunction VERSION
 * @param [cell] A cell to watch: the answer is computed again whenever it changes.
 * @returns The release, such as 1.0.0.
 */
export function version(cell?: unknown): string {
  void cell;
  return answer("VERSION", () => manifest.version);
}
