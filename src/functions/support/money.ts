import type { ProfitKind } from "../../planning/pricing";
import { exactDecimal, parseNumber, parseProportion, parseSize, sizeIn, type Decimal, type NumberRule, type SizeUnit } from "../../planning/quantity";
import { readScalar } from "./cells";
import { readNumber } from "./numbers";

/** Reads an amount of money above 0, exact. */
export function readMoney(received: unknown, argument: string): Decimal {
  return exactDecimal(readNumber(received, argument, { above: 0, example: 18000 }));
}

/** Reads a capacity as a number of `unit`: a bare number is in that unit already, text carries its own. */
export function readSizeIn(received: unknown, argument: string, unit: SizeUnit): Decimal {
  const value = readScalar(received, argument);
  return typeof value === "string"
    ? sizeIn(parseSize(value, argument), unit)
    : exactDecimal(parseNumber(value, argument, { above: 0, example: 40 }));
}

/** Reads an amount of money that may be 0, such as a cost; a blank is refused. */
export function readMoneyOrZero(received: unknown, argument: string): Decimal {
  return exactDecimal(readNumber(received, argument, { min: 0, example: 75 }));
}

const profitRules: Readonly<Record<ProfitKind, NumberRule>> = {
  margin: { min: 0, below: 1, example: 0.25 },
  markup: { min: 0, max: 10, example: 0.25 },
};

/** Reads a margin, 0 to below 1, or a mark-up, 0 to 10: 0.25 or "25%". */
export function readProfit(received: unknown, argument: string, kind: ProfitKind): Decimal {
  return exactDecimal(parseProportion(readScalar(received, argument), argument, profitRules[kind]));
}

/** Reads the step that prices are rounded to; a blank and 0 mean that they are not. */
export function readStep(received: unknown, argument: string): Decimal {
  return exactDecimal(readNumber(received, argument, { min: 0, default: 0, example: 0.05 }));
}
