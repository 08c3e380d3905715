import { exactDecimal, parseNumber, parseSize, sizeIn, type Decimal, type SizeUnit } from "../../planning/quantity";
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
