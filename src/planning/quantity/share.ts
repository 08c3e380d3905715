import type { Scalar } from "../../sheet";
import { explainComma, invalid, isNumberText, quote, type Problem } from "../text";
import { share, type Share } from "./brands";
import { readAs15Digits } from "./exact";
import { describeRule, fits, parseNumber, type NumberRule } from "./number";

/** Which shares are taken beside those between 0 and 1, and what a blank means. */
export interface ShareRule {
  /** What a blank means. A blank is refused where there is none. */
  readonly default?: number;
  /** Refuses 0, where nothing could follow from it. */
  readonly aboveZero?: boolean;
  /** Refuses 1. */
  readonly belowOne?: boolean;
}

/**
 * Reads a share of a whole, 0 to 1: a number such as 0.2, or text such as "20%".
 *
 * Refuses 20 with "Write 20% or 0.2", because a share and a percentage must never be mixed up.
 */
export function parseShare(value: Scalar, argument: string, rule: ShareRule = {}): Share {
  if (value === null && rule.default !== undefined) return share(rule.default);
  return share(parseProportion(value, argument, shareBounds(rule)));
}

const bounds: Readonly<Record<"whole" | "aboveZero" | "belowOne" | "between", NumberRule>> = {
  whole: { min: 0, max: 1, example: 0.2 },
  aboveZero: { above: 0, max: 1, example: 0.2 },
  belowOne: { min: 0, below: 1, example: 0.2 },
  between: { above: 0, below: 1, example: 0.2 },
};

function shareBounds({ aboveZero, belowOne }: ShareRule): NumberRule {
  if (aboveZero === true) return belowOne === true ? bounds.between : bounds.aboveZero;
  return belowOne === true ? bounds.belowOne : bounds.whole;
}

/**
 * Reads a number that people also write as a percentage, under `rule`.
 *
 * What is too large as it stands, but would do as a percentage, is refused with both ways of writing it; asked about where it is so near the
 * bound that either could be meant, as 1.5 is under 1.
 */
export function parseProportion(value: Scalar, argument: string, rule: NumberRule): number {
  const percentage = typeof value === "string" ? readPercentage(value) : null;
  if (percentage !== null) return parseNumber(percentage, argument, rule, value);
  if (typeof value === "number") refuseMixUp(value, value, argument, rule);
  if (typeof value === "string") throw explainText(value, argument, rule);
  return parseNumber(value, argument, rule);
}

/** Reads "20%" as 0.2; null where a text is no percentage. */
function readPercentage(text: string): number | null {
  const written = /^([+-]?(?=\.?\d)\d{0,20}(?:\.\d{0,20})?)\s*%$/.exec(text);
  return written === null ? null : readAs15Digits(Number(`${written[1]}e-2`));
}

function refuseMixUp(number: number, typed: string | number, argument: string, rule: NumberRule): void {
  const bound = number < 0 ? (rule.min ?? rule.above) : (rule.below ?? rule.max ?? Infinity);
  const shown = readAs15Digits(number);
  const divided = readAs15Digits(shown / 100);
  if (Math.abs(number) <= Math.abs(bound) || !fits(divided, rule)) return;
  const [start, whole] = [`${argument} is ${quote(typeof typed === "number" ? shown : typed)}`, `${readAs15Digits(shown * 100)}%`];
  if (Math.abs(number) < 2 * Math.abs(bound)) {
    throw invalid(argument, typed, `${start}: is it ${whole} or ${shown}%? Write ${describeRule(rule)}, or a percentage.`);
  }
  throw invalid(argument, typed, `${start}, which means ${whole}. Write ${shown}% or ${divided}.`, `${shown}%`, divided);
}

function explainText(text: string, argument: string, rule: NumberRule): Problem {
  if (isNumberText(text)) {
    refuseMixUp(Number(text), text, argument, rule);
    parseNumber(text, argument, rule);
  }
  const comma = explainComma(text, argument, (proposal) => parseProportion(proposal, argument, rule));
  const { example } = rule;
  return comma ?? invalid(argument, text, `${argument} ${quote(text)} is not a share. Write a number such as ${example}, or a percentage such as ${example * 100}%.`);
}
