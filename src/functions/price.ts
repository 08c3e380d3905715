// Price and release: what a terabyte costs, what a device costs to run, and which release computed a cell.
import { version as release } from "../../package.json";
import { unitPrice } from "../planning/pricing";
import { answer } from "./support/answer";
import { readMoney, readSizeIn } from "./support/money";
import { readUnit } from "./support/quantities";

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
    return unitPrice(readMoney(price, "price"), readSizeIn(capacity, "capacity", priced)).toNumber();
  });
}

/**
 * Tells which release of Baywright computed this cell.
 * @customfunction VERSION
 * @param [cell] A cell to watch: the answer is computed again whenever it changes.
 * @returns The release, such as 1.0.0.
 */
export function version(cell?: unknown): string {
  void cell;
  return answer("VERSION", () => release);
}
