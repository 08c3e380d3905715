import type { ProfitKind } from "../../planning/pricing";
import { exactDecimal, parseNumber, parseProportion, parseSize, sizeIn, type Decimal, type NumberRule, type SizeUnit } from "../../planning/quantity";
import { number } from "./numbers";
import { mapped, type Reader } from "./reader";
import { readScalar } from "./scalar";

/** Reads a number that keeps to `rule` as an exact decimal: an amount of money, or what is multiplied with one. */
export function exact(rule: NumberRule): Reader<Decimal> {
  return mapped(number(rule), exactDecimal);
}

/** Reads a capacity as a number of the unit that is priced: a bare number is in that unit already, text carries its own. */
export const capacityToPrice: Reader<(unit: SizeUnit) => Decimal> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    // Text without a unit is told to be a number, which is in the unit that is priced.
    if (typeof value !== "string" || /^[\d.,]+$/.test(value)) {
      const bare = exactDecimal(parseNumber(value, place, { above: 0, example: 40 }));
      return () => bare;
    }
    const size = parseSize(value, place);
    return (unit) => sizeIn(size, unit);
  },
};

const profitRules: Readonly<Record<ProfitKind, NumberRule>> = {
  margin: { min: 0, below: 1, example: 0.25 },
  markup: { min: 0, max: 10, example: 0.25 },
};

/** Reads a margin, 0 to below 1, or a mark-up, 0 to 10: 0.25 or "25%". Which one it is another argument says. */
export const profit: Reader<(kind: ProfitKind) => Decimal> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    return (kind) => exactDecimal(parseProportion(value, place, profitRules[kind]));
  },
  example: "25%",
};
