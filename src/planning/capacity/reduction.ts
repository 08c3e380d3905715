import { invalid, quote } from "../text";
import { exactFraction, parseNumber, readAs15Digits, type CellValue, type Fraction } from "../quantity";

const rule = { min: 1, max: 1000, example: 3 } as const;

/**
 * Reads a data reduction, at least 1 and at most 1000: a number such as 3, or text such as "3:1".
 *
 * A time of day is refused with the reason: 3:1 typed without quotes becomes 03:01, 30:1 becomes 30:01.
 */
export function parseReduction(value: CellValue, argument: string): Fraction {
  if (typeof value === "number" && isTime(value)) {
    throw invalid(argument, value, `${argument} is ${readAs15Digits(value)}, which looks like a time: 3:1 without quotes is 03:01. Write 3, or "3:1" in quotes.`);
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

/**
 * Tells a number of days that stands for hours and one minute. No number that a person writes as a reduction is one: (60 h + 1) / 1440
 * never ends as a decimal. Below 1 every number is taken for a time, since no reduction is.
 */
function isTime(days: number): boolean {
  const minutes = Math.round(days * 1440);
  return days > 0 && (days < 1 || (minutes % 60 === 1 && Math.abs(days - minutes / 1440) < 1e-12 * days));
}
