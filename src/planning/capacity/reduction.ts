import { invalid, quote } from "../problem";
import { exactFraction, parseNumber, type CellValue, type Fraction } from "../quantity";

const rule = { min: 1, max: 1000, example: 3 } as const;

/**
 * Reads a data reduction, at least 1 and at most 1000: a number such as 3, or text such as "3:1".
 *
 * A fraction of a day is refused with the reason: 3:1 typed without quotes becomes the time 03:01.
 */
export function parseReduction(value: CellValue, argument: string): Fraction {
  if (typeof value === "number" && value > 0 && value < 1) {
    throw invalid(argument, value, `${argument} is ${value}, which looks like a time: 3:1 without quotes is 03:01. Write 3, or "3:1" in quotes.`);
  }
  const ratio = typeof value === "string" ? /^(\d{1,6}(?:\.\d{1,6})?)\s*:\s*(\d{1,6}(?:\.\d{1,6})?)$/.exec(value) : null;
  if (ratio === null) return exactFraction(parseNumber(value, argument, rule));
  const before = exactFraction(Number(ratio[1]));
  const after = exactFraction(Number(ratio[2]));
  const reduction = { numerator: before.numerator * after.denominator, denominator: before.denominator * after.numerator };
  if (reduction.numerator < reduction.denominator || reduction.numerator > 1000n * reduction.denominator) {
    throw invalid(argument, value, `${argument} ${quote(value)} is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".`);
  }
  return reduction;
}
