import type { Scalar } from "../../sheet";
import { explainComma, invalid, quote } from "../text";
import { exactFraction, parseNumber, readAs15Digits, type Fraction } from "../quantity";

const rule = { min: 1, max: 1000, example: 3 } as const;

/**
 * Reads a data reduction, at least 1 and at most 1000: a number such as 3, or text such as "3:1".
 *
 * A time of day is refused with the ratio it was typed as: 3:1 without quotes becomes 03:01, 30:1 becomes 30:01.
 */
export function parseReduction(value: Scalar, argument: string): Fraction {
  if (typeof value === "number") refuseTime(value, argument);
  const ratio = typeof value === "string" ? /^(\d{1,6}(?:\.\d{1,6})?)\s*:\s*(\d{1,6}(?:\.\d{1,6})?)$/.exec(value) : null;
  if (ratio === null) {
    const comma = typeof value === "string" ? explainComma(value, argument, (proposal) => parseReduction(proposal, argument)) : null;
    if (comma !== null) throw comma;
    return exactFraction(parseNumber(value, argument, rule));
  }
  const before = exactFraction(Number(ratio[1]));
  const after = exactFraction(Number(ratio[2]));
  const reduction = { numerator: before.numerator * after.denominator, denominator: before.denominator * after.numerator };
  if (reduction.numerator < reduction.denominator || reduction.numerator > 1000n * reduction.denominator) {
    throw invalid(argument, value, `${argument} ${quote(value)} is out of range. Write data before : data after, from "1:1" to "1000:1", such as "3:1".`);
  }
  return reduction;
}

/**
 * Refuses a number of days that stands for hours and one minute. No number that a person writes as a reduction is one: (60 h + 1) / 1440
 * never ends as a decimal. Below 1 every number is taken for a time, since no reduction is; which ratio it was shows where it is whole minutes.
 */
function refuseTime(days: number, argument: string): void {
  const time = Math.round(days * 1440);
  const [hours, minutes] = [Math.floor(time / 60), time % 60];
  const isWhole = Math.abs(days - time / 1440) < 1e-12 * days;
  if (days <= 0 || (days >= 1 && !(isWhole && minutes === 1))) return;
  const start = `${argument} is ${readAs15Digits(days)}, which looks like a time`;
  if (!isWhole || minutes === 0 || hours < minutes) throw invalid(argument, days, `${start}: 3:1 without quotes is 03:01. Write a ratio in quotes, such as "3:1".`);
  const ratio = `${hours}:${minutes}`;
  const clock = `${String(hours).padStart(2, "0")}:${String(minutes).padStart(2, "0")}`;
  throw invalid(argument, days, `${start}: ${ratio} without quotes is ${clock}. Write "${ratio}" in quotes.`, ratio);
}
